using LinkMargin.Engine.Propagation;

namespace LinkMargin.Engine.Links;

/// <summary>What a crossing costs, from its geometry and the loss of its material.</summary>
public static class CrossingLoss
{
    /// <summary>Loss of one crossing.</summary>
    /// <param name="kind">What kind of thing it is.</param>
    /// <param name="share">The crossing's share, 0 or more.</param>
    /// <param name="materialDb">The material's loss at normal incidence, dB.</param>
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
