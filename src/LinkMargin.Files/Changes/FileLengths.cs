using System.Globalization;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Changes;

/// <summary>Lengths for a house file: in its unit, rounded to a millimetre or a sixteenth of an inch.</summary>
/// <param name="bareUnit">The unit of the file's bare numbers.</param>
internal sealed class FileLengths(LengthUnit bareUnit)
{
    private const double Millimetre = 0.001;
    private const double SixteenthOfAnInch = LengthUnits.MetresPerInch / 16;

    private readonly LengthFormat format = new(bareUnit);

    private double Step => format.InFeet ? SixteenthOfAnInch : Millimetre;

    /// <summary>The nearest length that the file can hold.</summary>
    public double Rounded(double metres) => Parsed(Text(metres, "0"));

    /// <summary>Whether two lengths are equal once written to the file.</summary>
    public bool AreSame(double one, double other) => Math.Abs(one - other) < Step / 2;

    /// <summary>A length in the form of the one it replaces: a bare number stays bare, a length with a unit keeps a unit.</summary>
    /// <param name="metres">The length, metres.</param>
    /// <param name="was">The text it replaces.</param>
    public string Text(double metres, string was)
    {
        bool isBare = double.TryParse(was, NumberStyles.Float, CultureInfo.InvariantCulture, out _);
        if (!format.InFeet)
        {
            LengthUnit unit = isBare ? bareUnit : UnitOf(was) ?? LengthUnit.Metre;
            double one = LengthUnits.InMetres(unit);
            string number = (Math.Round(metres / Millimetre) * Millimetre / one).ToString(Digits(unit), CultureInfo.InvariantCulture);
            return isBare ? number : $"{number} {WordOf(unit)}";
        }

        // A bare number in feet may be decimal; it stays decimal, with enough digits to tell sixteenths of an inch apart.
        double parts = Math.Round(metres / SixteenthOfAnInch) * SixteenthOfAnInch;
        return isBare
            ? (parts / LengthUnits.InMetres(bareUnit)).ToString("0.######", CultureInfo.InvariantCulture)
            : format.Exact(parts);
    }

    /// <summary>A length of the file in metres.</summary>
    public double Parsed(string text) => LengthText.Parse(text, bareUnit).Value;

    private static LengthUnit? UnitOf(string text) => LengthUnits.FromWord(new string([.. text.SkipWhile(c => !char.IsLetter(c))]).Trim());

    private static string WordOf(LengthUnit unit) => LengthUnits.FileWords.First(pair => pair.Value == unit).Key;

    private static string Digits(LengthUnit unit) => unit switch
    {
        LengthUnit.Centimetre => "0.#",
        LengthUnit.Millimetre => "0",
        _ => "0.###",
    };
}
