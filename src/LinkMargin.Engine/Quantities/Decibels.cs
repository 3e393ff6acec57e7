namespace LinkMargin.Engine.Quantities;

/// <summary>A power ratio in decibels. Positive is a gain where it is added, a loss where it is subtracted.</summary>
/// <param name="Db">The ratio, dB.</param>
public readonly record struct Decibels(double Db) : IComparable<Decibels>
{
    /// <summary>Ratios in series: their decibels add.</summary>
    public static Decibels operator +(Decibels a, Decibels b) => new(a.Db + b.Db);

    /// <summary>One ratio less another.</summary>
    public static Decibels operator -(Decibels a, Decibels b) => new(a.Db - b.Db);

    /// <summary>The linear power ratio, 10^(dB/10).</summary>
    public double PowerRatio => ToPowerRatio(Db);

    /// <inheritdoc/>
    public int CompareTo(Decibels other) => Db.CompareTo(other.Db);

    /// <summary>Whether <paramref name="a"/> is the smaller.</summary>
    public static bool operator <(Decibels a, Decibels b) => a.Db < b.Db;

    /// <summary>Whether <paramref name="a"/> is the larger.</summary>
    public static bool operator >(Decibels a, Decibels b) => a.Db > b.Db;

    /// <summary>Whether <paramref name="a"/> is not the larger.</summary>
    public static bool operator <=(Decibels a, Decibels b) => a.Db <= b.Db;

    /// <summary>Whether <paramref name="a"/> is not the smaller.</summary>
    public static bool operator >=(Decibels a, Decibels b) => a.Db >= b.Db;

    /// <summary>Decibels to a linear power ratio.</summary>
    public static double ToPowerRatio(double db) => Math.Pow(10, db / 10);

    /// <summary>A linear power ratio, above zero, to decibels.</summary>
    public static double FromPowerRatio(double ratio) => 10 * Math.Log10(ratio);

    /// <summary>A linear power ratio, above zero, as a loss: 0, and not −0, for a ratio of 1.</summary>
    public static double LossFromPowerRatio(double ratio) => 0 - FromPowerRatio(ratio);
}
