using System.Globalization;
using LinkMargin.Files.Tables;

namespace LinkMargin.Cli.Output;

/// <summary>Which rows the tables have: an overview by kind, and those that answer to a word.</summary>
internal static class RowsText
{
    /// <summary>Writes how many rows of each kind there are, and their names.</summary>
    public static void WriteOverview(IReadOnlyList<RowKind> kinds, TextWriter output, int width)
    {
        var table = new TextTable([new Column("kind"), new Column("rows", Align.Right), new Column("names") { Wraps = true }]);
        foreach (RowKind kind in kinds)
        {
            table.Add(kind.Name, kind.Count.ToString(CultureInfo.InvariantCulture), string.Join(", ", kind.Names));
        }

        table.WriteTo(output, width);
        output.WriteLine();
        WordWrap.Write("'linkmargin materials' with a kind lists its rows with their figures and sources; with a name, one row in full; with any other "
            + "word, such as siding, the rows that answer to it; with --all, everything.", output, width);
    }

    /// <summary>Writes the rows that a word found.</summary>
    public static void WriteFound(string word, IReadOnlyList<FoundRow> rows, TextWriter output, int width)
    {
        WordWrap.Write(rows.Count == 1
            ? $"No row is named '{word}'; one answers to it:"
            : FormattableString.Invariant($"No row is named '{word}'; {rows.Count} answer to it, best first:"), output, width);
        output.WriteLine();
        var table = new TextTable([new Column("name"), new Column("kind"), new Column("what it is") { Wraps = true }]);
        foreach (FoundRow row in rows)
        {
            table.Add(row.Name, row.Kind, row.What);
        }

        table.WriteTo(output, width);
        output.WriteLine();
        WordWrap.Write($"'linkmargin materials {rows[0].Name}' shows the first in full.", output, width);
    }
}
