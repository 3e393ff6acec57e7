namespace LinkMargin.Files.Writing;

/// <summary>
/// Names in files that spreadsheets open. A spreadsheet runs a cell that begins like a formula; an apostrophe before it
/// makes it text. Reading takes the apostrophe off again.
/// </summary>
internal static class SpreadsheetText
{
    private const char Apostrophe = '\'';

    /// <summary>What is written into a cell for a name.</summary>
    public static string Written(string name) => BeginsLikeFormula(name) ? Apostrophe + name : name;

    /// <summary>The name that a cell was written for.</summary>
    public static string Read(string cell) => cell.StartsWith(Apostrophe) && BeginsLikeFormula(cell) ? cell[1..] : cell;

    // After any apostrophes: one that is the name's own must not be taken for ours.
    private static bool BeginsLikeFormula(string text) =>
        text.AsSpan().TrimStart(Apostrophe) is ['=' or '+' or '-' or '@' or '\t' or '\r', ..];
}
