using System.Globalization;
using System.Text.RegularExpressions;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Files.Quantities;

/// <summary>
/// Reads a length as people write it: a bare number in the file's unit, a number with a unit, or feet and inches with
/// fractions of an inch.
/// </summary>
public static partial class LengthText
{
    /// <summary>Reads a length in metres.</summary>
    /// <param name="text">The text.</param>
    /// <param name="bareUnit">The unit of a number that has none.</param>
    public static Parsed Parse(string text, LengthUnit bareUnit)
    {
        string plain = WithPlainQuotes(text.Trim());
        string notALength = new LengthFormat(bareUnit).InFeet
            ? "is not a length; write, for example, 12ft 6in or 4 1/2in"
            : "is not a length; write, for example, 3.81 m or 38 mm";
        if (plain.Length > NumberText.LongestText)
        {
            return Parsed.Wrong(notALength);
        }

        // Most lengths are a bare number; patterns take much longer.
        ReadOnlySpan<char> digits = plain.AsSpan(plain is ['-', ..] ? 1 : 0);
        if (NumberText.HasOnlyDigitsAndPoints(digits))
        {
            Parsed number = NumberText.Parse(digits.ToString(), notALength);
            return number.Fault is not null ? number : Metres(number.Value, bareUnit, isNegative: digits.Length < plain.Length);
        }

        if (FeetAndInches().Match(plain) is { Success: true } both)
        {
            return OfFeetAndInches(both, notALength);
        }

        if (OneFigure().Match(plain) is not { Success: true } one)
        {
            return NumberText.Parse(plain, notALength);
        }

        Parsed figure = Figure(one.Groups["figure"].Value, notALength);
        string word = one.Groups["unit"].Value;
        if (figure.Fault is not null)
        {
            return figure;
        }

        LengthUnit? unit = word.Length == 0 ? bareUnit : LengthUnits.FromWord(word);
        if (unit is not { } known)
        {
            return Parsed.Wrong($"has the unit '{word}', which is not a unit of length; write m, cm, mm, ft or in");
        }

        return Metres(figure.Value, known, one.Groups["sign"].Value == "-");
    }

    private static Parsed Metres(double figure, LengthUnit unit, bool isNegative)
    {
        double metres = figure * LengthUnits.InMetres(unit);
        return Parsed.Of(isNegative ? -metres : metres);
    }

    private static Parsed OfFeetAndInches(Match match, string notALength)
    {
        if (match.Groups["unit"].Value.Length == 0)
        {
            return Parsed.Wrong("has no unit after its last number; write inches as 6in, as in 12ft 6in");
        }

        Parsed feet = Figure(match.Groups["feet"].Value, notALength), inches = Figure(match.Groups["inches"].Value, notALength);
        if (feet.Fault is not null || inches.Fault is not null)
        {
            return feet.Fault is not null ? feet : inches;
        }

        if (feet.Value != Math.Floor(feet.Value))
        {
            return Parsed.Wrong("has a fraction of a foot before its inches; write whole feet, as in 12ft 6in");
        }

        if (inches.Value >= 12)
        {
            return Parsed.Wrong("has 12 inches or more after its feet; carry them over, as in 13ft 1in");
        }

        double metres = (feet.Value * LengthUnits.MetresPerFoot) + (inches.Value * LengthUnits.MetresPerInch);
        return Parsed.Of(match.Groups["sign"].Value == "-" ? -metres : metres);
    }

    /// <summary>A number, a fraction such as 1/2, or both as in 6 1/2.</summary>
    private static Parsed Figure(string text, string notALength)
    {
        if (Fraction().Match(text) is not { Success: true } match)
        {
            return NumberText.Parse(text, notALength);
        }

        double below = Whole(match, "below");
        return below == 0
            ? Parsed.Wrong("divides by zero")
            : Parsed.Of(Whole(match, "whole") + (Whole(match, "above") / below));
    }

    private static double Whole(Match match, string group) =>
        match.Groups[group].Value is { Length: > 0 } digits ? double.Parse(digits, CultureInfo.InvariantCulture) : 0;

    /// <summary>Undoes the primes and curly quotes that word processors and phones put in place of straight quotes.</summary>
    private static string WithPlainQuotes(string text) =>
        text.Replace('\u2032', '\'').Replace('\u2019', '\'').Replace('\u2033', '"').Replace('\u201d', '"').Replace('\u2212', '-');

    [GeneratedRegex(
        @"^(?<sign>[+-]?)(?<feet>[0-9.]+)\s*(ft|foot|feet|')\s*-?\s*(?<inches>[0-9][0-9. /]*?)\s*(?<unit>in|inch|inches|""|''|)$",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex FeetAndInches();

    [GeneratedRegex(
        @"^(?<sign>[+-]?)(?<figure>[0-9][0-9.]*([eE][+-]?[0-9]+)?|\.[0-9]+|([0-9]+\s+)?[0-9]+/[0-9]+)\s*(?<unit>\p{L}+|'|""|''|)$",
        RegexOptions.CultureInvariant)]
    private static partial Regex OneFigure();

    [GeneratedRegex(@"^((?<whole>[0-9]+)\s+)?(?<above>[0-9]+)/(?<below>[0-9]+)$", RegexOptions.CultureInvariant)]
    private static partial Regex Fraction();
}
