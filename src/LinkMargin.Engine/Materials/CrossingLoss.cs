namespace LinkMargin.Engine.Materials;

/// <summary>The loss of a crossing, from its geometry and the loss of its material.</summary>
public static class CrossingLoss
{
    /// <summary>Loss of one crossing.</summary>
    /// <param name="kind">What kind of thing it is.</param>
    /// <param name="share">The crossing's share, 0 or more.</param>
    /// <param name="materialDb">The material's loss at the angle of the crossing, dB.</param>
    /// <returns>
    /// dB. Joists cover part of the first Fresnel zone; the field behind them is the mean of what comes through them and
    /// what comes between them, so amplitudes are averaged by the share covered. Everything else scales with its share.
    /// </returns>
    public static double Db(ObstacleKind kind, double share, double materialDb)
    {
        if (kind != ObstacleKind.Joists)
        {
            return share * materialDb;
        }

        // Never more than the joists alone, rounding included.
        return Math.Min(materialDb, RibbedTransmission.LossDb(share, materialDb, 0));
    }
}

/// <summary>What kind of thing a path crosses.</summary>
public enum ObstacleKind
{
    /// <summary>A wall outside its openings.</summary>
    Wall,

    /// <summary>A shut door, a window, or another filled opening.</summary>
    Opening,

    /// <summary>One layer of a floor build-up.</summary>
    FloorLayer,

    /// <summary>The joists of a floor, by the share of the first Fresnel zone they cover.</summary>
    Joists,

    /// <summary>A solid fixture, or one panel of a shell.</summary>
    Fixture,

    /// <summary>The body of somebody who sits in another seat.</summary>
    Player,
}
