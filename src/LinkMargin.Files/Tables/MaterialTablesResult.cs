using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tables;

/// <summary>What reading the tables gave.</summary>
/// <param name="Tables">The tables; null where a mistake must be mended first.</param>
/// <param name="Problems">Every mistake and note, by file and place.</param>
public sealed record MaterialTablesResult(MaterialTables? Tables, IReadOnlyList<Problem> Problems);
