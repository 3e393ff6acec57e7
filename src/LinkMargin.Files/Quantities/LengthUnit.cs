namespace LinkMargin.Files.Quantities;

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
