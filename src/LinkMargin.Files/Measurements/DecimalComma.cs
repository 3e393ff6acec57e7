using System.Text.RegularExpressions;

namespace LinkMargin.Files.Measurements;

/// <summary>
/// Spreadsheets write the decimal sign of the country they are set to. In a file of readings a comma inside a number can be
/// nothing else: no level or coordinate in a house has thousands to part.
/// </summary>
internal static partial class DecimalComma
{
    /// <summary>The text with a decimal comma as a point; any other text as it is.</summary>
    public static string AsPoint(string text) => text.Contains('.', StringComparison.Ordinal) ? text : Comma().Replace(text, ".");

    [GeneratedRegex("(?<=[0-9]),(?=[0-9])", RegexOptions.CultureInvariant)]
    private static partial Regex Comma();
}
