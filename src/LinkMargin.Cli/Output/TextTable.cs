namespace LinkMargin.Cli.Output;

/// <summary>
/// A table in plain text: the same on a terminal, in a file and in a pipe. Lines have no blanks at their end.
/// </summary>
internal sealed class TextTable(IReadOnlyList<Column> columns)
{
    private const string Gap = "  ";

    // Narrower than this a wrapped column cannot be read; the table then grows past its width instead.
    private const int LeastWrappedWidth = 16;

    // A null stands for a rule.
    private readonly List<IReadOnlyList<string>?> rows = [];

    /// <summary>How many characters across it is where nothing needs to wrap.</summary>
    public int NaturalWidth => Across(NaturalWidths());

    /// <summary>Adds a row of as many cells as there are columns.</summary>
    public void Add(params IReadOnlyList<string> cells)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(cells.Count, columns.Count);
        rows.Add(cells);
    }

    /// <summary>Adds a rule across the table.</summary>
    public void AddRule() => rows.Add(null);

    /// <summary>Writes headings, a rule and the rows.</summary>
    /// <param name="output">Where to.</param>
    /// <param name="width">The width that columns which wrap are to keep the table within.</param>
    public void WriteTo(TextWriter output, int width)
    {
        int[] widths = Widths(width);
        WriteRow(output, widths, [.. columns.Select(column => column.Heading)], atBottom: true);
        WriteRule(output, widths);
        foreach (IReadOnlyList<string>? row in rows)
        {
            if (row is null)
            {
                WriteRule(output, widths);
            }
            else
            {
                WriteRow(output, widths, row, atBottom: false);
            }
        }
    }

    private static int Across(int[] widths) => widths.Sum() + (Gap.Length * (widths.Length - 1));

    private int[] NaturalWidths() =>
    [
        .. columns.Select((column, i) =>
            rows.Where(row => row is not null).Select(row => row![i]).Append(column.Heading).Max(WidestLine)),
    ];

    private int[] Widths(int width)
    {
        int[] widths = NaturalWidths();
        int excess = Across(widths) - width;
        for (; excess > 0 && WidestWrapped(widths) is { } widest; excess--)
        {
            widths[widest]--;
        }

        return widths;
    }

    private int? WidestWrapped(int[] widths) => Enumerable.Range(0, widths.Length)
        .Where(i => columns[i].Wraps && widths[i] > LeastWrappedWidth)
        .OrderByDescending(i => widths[i])
        .Select(i => (int?)i)
        .FirstOrDefault();

    private static int WidestLine(string text) => text.Split('\n').Max(WordWrap.WidthOf);

    private static void WriteRule(TextWriter output, int[] widths) =>
        output.WriteLine(new string('-', Across(widths)));

    private void WriteRow(TextWriter output, int[] widths, IReadOnlyList<string> cells, bool atBottom)
    {
        string[][] lines = [.. cells.Select((cell, i) => LinesOf(cell, widths[i]))];
        int height = lines.Max(cell => cell.Length);
        for (int line = 0; line < height; line++)
        {
            var placed = cells.Select((_, i) => Placed(lines[i].ElementAtOrDefault(line - (atBottom ? height - lines[i].Length : 0)), i));
            output.WriteLine(string.Join(Gap, placed).TrimEnd());
        }

        string Placed(string? text, int column)
        {
            string blanks = new(' ', widths[column] - WordWrap.WidthOf(text ?? ""));
            return columns[column].Align == Align.Right ? blanks + text : text + blanks;
        }
    }

    // Only what is too wide is broken anew, so that blanks somebody placed stay.
    private static string[] LinesOf(string cell, int width) =>
        WidestLine(cell) <= width ? cell.Split('\n') : [.. WordWrap.Lines(cell, width)];
}
