using System.Buffers;
using System.Globalization;
using System.Text.RegularExpressions;

namespace LinkMargin.Files.Quantities;

/// <summary>Reads a bare number, independent of the machine's culture.</summary>
internal static partial class NumberText
{
    /// <summary>A longer text is not a number that a person wrote.</summary>
    public const int LongestText = 60;

    private static readonly SearchValues<char> DigitsAndPoints = SearchValues.Create("0123456789.");

    /// <summary>Reads a finite number.</summary>
    /// <param name="text">The text.</param>
    /// <param name="notANumber">The fault to return if the text is not a number.</param>
    public static Parsed Parse(string text, string notANumber)
    {
        string trimmed = text.Trim();
        if (trimmed.Length > LongestText)
        {
            return Parsed.Wrong(notANumber);
        }

        // Patterns take much longer than most numbers need.
        if (!IsPlain(trimmed))
        {
            if (NotFinite().IsMatch(trimmed))
            {
                return Parsed.Wrong("is not a finite number");
            }

            if (DecimalComma().IsMatch(trimmed))
            {
                return Parsed.Wrong($"has a decimal comma; write {trimmed.Replace(',', '.')}");
            }

            if (!Decimal().IsMatch(trimmed))
            {
                return Parsed.Wrong(notANumber);
            }
        }

        double value = double.Parse(trimmed, NumberStyles.Float, CultureInfo.InvariantCulture);
        return double.IsFinite(value) ? Parsed.Of(value) : Parsed.Wrong("is too large to be a finite number");
    }

    /// <summary>Whether a text has only digits and points, a digit first.</summary>
    public static bool HasOnlyDigitsAndPoints(ReadOnlySpan<char> text) =>
        text is [>= '0' and <= '9', ..] && !text.ContainsAnyExcept(DigitsAndPoints);

    private static bool IsPlain(string text) => HasOnlyDigitsAndPoints(text) && text.IndexOf('.') == text.LastIndexOf('.');

    [GeneratedRegex(@"^[+-]?([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][+-]?[0-9]+)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Decimal();

    [GeneratedRegex(@"^[+-]?[0-9]*,[0-9]+(\s*\p{L}+)?$", RegexOptions.CultureInvariant)]
    private static partial Regex DecimalComma();

    [GeneratedRegex(@"^[+-]?\.?(nan|inf|infinity|∞)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex NotFinite();
}

/// <summary>
/// Spreadsheets use the decimal sign of their locale. In a measurements file a comma inside a number can only be a decimal sign:
/// no level or coordinate of a house needs a thousands separator.
/// </summary>
internal static partial class DecimalComma
{
    /// <summary>The text with a decimal comma changed to a point; any other text unchanged.</summary>
    public static string AsPoint(string text) => text.Contains('.', StringComparison.Ordinal) ? text : Comma().Replace(text, ".");

    [GeneratedRegex("(?<=[0-9]),(?=[0-9])", RegexOptions.CultureInvariant)]
    private static partial Regex Comma();
}
