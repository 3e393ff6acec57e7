namespace LinkMargin.Files.Writing;

/// <summary>
/// Names in files that spreadsheets open. A spreadsheet evaluates a cell that starts like a formula; a leading apostrophe
/// makes it text. Reading removes the apostrophe again.
/// </summary>
internal static class SpreadsheetText
{
    private const char Apostrophe = '\'';

    /// <summary>The cell text for a name.</summary>
    public static string Written(string name) => BeginsLikeFormula(name) ? Apostrophe + name : name;

    /// <summary>The name that a cell text stands for.</summary>
    public static string Read(string cell) => cell.StartsWith(Apostrophe) && BeginsLikeFormula(cell) ? cell[1..] : cell;

    // Ignores leading apostrophes, so that an apostrophe of the name itself is not taken for ours.
    private static bool BeginsLikeFormula(string text) =>
        text.AsSpan().TrimStart(Apostrophe) is ['=' or '+' or '-' or '@' or '\t' or '\r', ..];
}
