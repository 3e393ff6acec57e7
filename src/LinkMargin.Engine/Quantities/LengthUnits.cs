namespace LinkMargin.Engine.Quantities;

/// <summary>How units of length are written and what they are in metres.</summary>
public static class LengthUnits
{
    /// <summary>Exact since the international yard and pound agreement of 1959.</summary>
    public const double MetresPerInch = 0.0254;

    /// <summary>Twelve inches.</summary>
    public const double MetresPerFoot = 0.3048;

    /// <summary>The words for the unit of a file's bare numbers.</summary>
    public static IReadOnlyDictionary<string, LengthUnit> FileWords { get; } = new Dictionary<string, LengthUnit>
    {
        ["m"] = LengthUnit.Metre,
        ["cm"] = LengthUnit.Centimetre,
        ["mm"] = LengthUnit.Millimetre,
        ["ft"] = LengthUnit.Foot,
        ["in"] = LengthUnit.Inch,
    };

    /// <summary>One of a unit, in metres.</summary>
    public static double InMetres(LengthUnit unit) => unit switch
    {
        LengthUnit.Metre => 1,
        LengthUnit.Centimetre => 0.01,
        LengthUnit.Millimetre => 0.001,
        LengthUnit.Foot => MetresPerFoot,
        LengthUnit.Inch => MetresPerInch,
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, "This is not a unit of length."),
    };

    /// <summary>The unit a word stands for, as people write it after a number; null if it is not a unit.</summary>
    public static LengthUnit? FromWord(string word) => word.ToLowerInvariant() switch
    {
        "m" or "metre" or "metres" or "meter" or "meters" => LengthUnit.Metre,
        "cm" => LengthUnit.Centimetre,
        "mm" => LengthUnit.Millimetre,
        "ft" or "foot" or "feet" or "'" => LengthUnit.Foot,
        "in" or "inch" or "inches" or "\"" or "''" => LengthUnit.Inch,
        _ => null,
    };
}

/// <summary>A unit of length.</summary>
public enum LengthUnit
{
    /// <summary>Metre.</summary>
    Metre,

    /// <summary>Centimetre.</summary>
    Centimetre,

    /// <summary>Millimetre.</summary>
    Millimetre,

    /// <summary>Foot.</summary>
    Foot,

    /// <summary>Inch.</summary>
    Inch,
}
