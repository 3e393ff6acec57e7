namespace LinkMargin.Engine.Quantities;

/// <summary>
/// A power level in dBm. A level plus or minus a ratio is a level; the difference of two levels is a ratio; levels cannot be added.
/// </summary>
/// <param name="Dbm">The level, decibels relative to one milliwatt.</param>
public readonly record struct PowerLevel(double Dbm)
{
    /// <summary>Makes a level from decibels relative to one milliwatt.</summary>
    public static PowerLevel FromDbm(double dbm) => new(dbm);

    /// <summary>The level after a gain.</summary>
    public static PowerLevel operator +(PowerLevel level, Decibels gain) => new(level.Dbm + gain.Db);

    /// <summary>The level after a loss.</summary>
    public static PowerLevel operator -(PowerLevel level, Decibels loss) => new(level.Dbm - loss.Db);

    /// <summary>How far one level is above another.</summary>
    public static Decibels operator -(PowerLevel a, PowerLevel b) => new(a.Dbm - b.Dbm);
}
