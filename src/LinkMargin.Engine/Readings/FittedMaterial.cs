namespace LinkMargin.Engine.Readings;

/// <summary>A material before and after.</summary>
/// <param name="Name">Its row in the material table.</param>
/// <param name="TableLossDb">What the table says, dB.</param>
/// <param name="TableSpreadDb">How far that may be out in one house, dB.</param>
/// <param name="ShiftDb">What it loses more in this house, dB; below 0 for less.</param>
/// <param name="SpreadDb">How far that may still be out, dB.</param>
public sealed record FittedMaterial(string Name, double TableLossDb, double TableSpreadDb, double ShiftDb, double SpreadDb)
{
    /// <summary>The loss in this house, dB.</summary>
    public double LossDb => TableLossDb + ShiftDb;

    /// <summary>Spread left of the spread there was: 1 where the readings say nothing, 0 where they say all.</summary>
    public double SpreadLeft => TableSpreadDb > 0 ? SpreadDb / TableSpreadDb : 1;

    /// <summary>The shift in spreads of the table: beyond 2 or so it is more than the table allows for.</summary>
    public double ShiftInSpreads => TableSpreadDb > 0 ? ShiftDb / TableSpreadDb : 0;
}
