using System.Globalization;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Cli.Output;

/// <summary>Lengths in the words of the house file: metres, or feet and inches.</summary>
/// <param name="unit">The unit of the house file's bare numbers.</param>
internal sealed class LengthWords(LengthUnit unit)
{
    /// <summary>Whether the house is written in feet or inches.</summary>
    public bool InFeet { get; } = unit is LengthUnit.Foot or LengthUnit.Inch;

    /// <summary>A length for a column of them: to a centimetre, or to an inch.</summary>
    public string Brief(double metres) => InFeet ? FeetAndInches(metres) : Metres(metres);

    /// <summary>A length for a sentence; a house in feet gets metres too, since formulas and tables speak metres.</summary>
    public string InFull(double metres) => InFeet ? $"{FeetAndInches(metres)} ({Metres(metres)})" : Metres(metres);

    /// <summary>The unit areas are said in.</summary>
    public string AreaUnit => InFeet ? "sq ft" : "m2";

    /// <summary>An area in <see cref="AreaUnit"/>: to a tenth of a square metre, or to a square foot.</summary>
    public string Area(double squareMetres) => InFeet
        ? (squareMetres / (LengthUnits.MetresPerFoot * LengthUnits.MetresPerFoot)).ToString("0", CultureInfo.InvariantCulture)
        : squareMetres.ToString("0.0", CultureInfo.InvariantCulture);

    private static string Metres(double metres) => metres.ToString("0.00", CultureInfo.InvariantCulture) + " m";

    // Whole inches first, so that twelve of them never stand behind the feet.
    private static string FeetAndInches(double metres)
    {
        long inches = (long)Math.Round(metres / LengthUnits.MetresPerInch, MidpointRounding.AwayFromZero);
        return string.Create(CultureInfo.InvariantCulture, $"{inches / 12}ft {inches % 12}in");
    }
}
