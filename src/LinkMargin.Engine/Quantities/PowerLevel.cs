namespace LinkMargin.Engine.Quantities;

/// <summary>
/// A power level in dBm. A level and a ratio make a level; two levels make a ratio; two levels cannot be added, only
/// their powers summed (<see cref="SumOfPowers"/>).
/// </summary>
/// <param name="Dbm">The level, decibels over one milliwatt.</param>
public readonly record struct PowerLevel(double Dbm)
{
    /// <summary>Makes a level from decibels over one milliwatt.</summary>
    public static PowerLevel FromDbm(double dbm) => new(dbm);

    /// <summary>The level after a gain.</summary>
    public static PowerLevel operator +(PowerLevel level, Decibels gain) => new(level.Dbm + gain.Db);

    /// <summary>The level after a loss.</summary>
    public static PowerLevel operator -(PowerLevel level, Decibels loss) => new(level.Dbm - loss.Db);

    /// <summary>How far one level stands above another.</summary>
    public static Decibels operator -(PowerLevel a, PowerLevel b) => new(a.Dbm - b.Dbm);

    /// <summary>The level of two uncorrelated signals together.</summary>
    public static PowerLevel SumOfPowers(PowerLevel a, PowerLevel b)
    {
        // What the weaker adds to the stronger, so that levels too weak for a linear number in milliwatts still sum.
        double stronger = Math.Max(a.Dbm, b.Dbm), weaker = Math.Min(a.Dbm, b.Dbm);
        return new(stronger + Decibels.FromPowerRatio(1 + Decibels.ToPowerRatio(weaker - stronger)));
    }
}
