namespace LinkMargin.Reports.Layout;

/// <summary>
/// A table in plain text: the same on a terminal, in a file and in a pipe. Lines have no trailing spaces. To keep within its
/// width it wraps headings first, then columns of running text, then every column of words, with short headings. If that
/// is not enough, each row becomes a list of headings and values. A number is never broken.
/// </summary>
internal sealed class TextTable(IReadOnlyList<Column> columns)
{
    private const string Gap = "  ";

    // Narrower than this, running text is hard to read.
    private const int LeastWrappedWidth = 16;

    // A longer word may be cut to this width if otherwise the table would not fit.
    private const int LeastWordWidth = 12;

    // Null means a horizontal rule.
    private readonly List<IReadOnlyList<Cell>?> rows = [];

    private IEnumerable<IReadOnlyList<Cell>> Cells => rows.OfType<IReadOnlyList<Cell>>();

    /// <summary>Whether it fits as a table within a width without cutting a word.</summary>
    public bool FitsIn(int width) => Across(WordWidths(Short)) <= width;

    /// <summary>Adds a row with as many cells as there are columns.</summary>
    public void Add(params IReadOnlyList<Cell> cells)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(cells.Count, columns.Count);
        rows.Add(cells);
    }

    /// <summary>Adds a horizontal rule.</summary>
    public void AddRule() => rows.Add(null);

    /// <summary>Writes headings, a rule and the rows.</summary>
    /// <param name="output">Where to write.</param>
    /// <param name="width">The greatest width.</param>
    public void WriteTo(TextWriter output, int width)
    {
        if (Layout(width) is not var (headings, widths))
        {
            WriteAsList(output, width);
            return;
        }

        WriteRow(output, widths, [.. headings.Select(Cell.Words)], atBottom: true);
        WriteRule(output, widths);
        foreach (IReadOnlyList<Cell>? row in rows)
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

    private string[] Full => [.. columns.Select(column => column.Heading)];

    private string[] Short => [.. columns.Select(column => column.ShortHeading ?? column.Heading)];

    private static int Across(int[] widths) => widths.Sum() + (Gap.Length * (widths.Length - 1));

    // Tries ever narrower layouts, the least harmful first.
    private (string[] Headings, int[] Widths)? Layout(int width)
    {
        string[] full = Full, brief = Short;
        (string[] Headings, int[] Least)[] ways =
        [
            (full, NaturalWidths(full)),
            (full, HeadingWidths(full)),
            (full, [.. HeadingWidths(full).Select((w, i) => columns[i].Wraps ? Math.Min(w, Math.Max(LeastWrappedWidth, WordWidth(full, i))) : w)]),
            (brief, [.. HeadingWidths(brief).Select((w, i) => columns[i].Wraps ? Math.Min(w, Math.Max(LeastWrappedWidth, WordWidth(brief, i))) : w)]),
            (brief, WordWidths(brief)),
            (brief, [.. WordWidths(brief).Select((w, i) => Math.Max(WholeWidth(i), Math.Min(w, LeastWordWidth)))]),
        ];
        foreach ((string[] headings, int[] least) in ways)
        {
            if (Across(least) <= width)
            {
                return (headings, Shrunk(NaturalWidths(headings), least, width));
            }
        }

        return null;
    }

    // Columns of numbers, whose headings can wrap, are narrowed before columns of words, the widest first.
    private int[] Shrunk(int[] natural, int[] least, int width)
    {
        int[] widths = [.. natural];
        for (int excess = Across(widths) - width; excess > 0; excess--)
        {
            int widest = Enumerable.Range(0, widths.Length).Where(i => widths[i] > least[i])
                .OrderByDescending(i => columns[i].Align == Align.Right).ThenByDescending(i => widths[i]).First();
            widths[widest]--;
        }

        return widths;
    }

    private int[] NaturalWidths(string[] headings) =>
        [.. columns.Select((_, i) => Math.Max(WidestLine(headings[i]), Widest(i, cell => WidestLine(cell.Text))))];

    // With headings wrapped and cells unwrapped.
    private int[] HeadingWidths(string[] headings) =>
        [.. columns.Select((_, i) => Math.Max(LongestWord(headings[i]), Widest(i, cell => WidestLine(cell.Text))))];

    // With everything wrapped that may be, but no word cut.
    private int[] WordWidths(string[] headings) => [.. columns.Select((_, i) => WordWidth(headings, i))];

    private int WordWidth(string[] headings, int i) => Math.Max(
        Math.Max(LongestWord(headings[i]), WholeWidth(i)), Widest(i, cell => LongestWord(cell.Text)));

    // The width of cells that must not be broken, such as numbers.
    private int WholeWidth(int i) => Widest(i, cell => MayWrap(cell, i) ? 0 : WidestLine(cell.Text));

    private int Widest(int column, Func<Cell, int> width) => Cells.Select(row => width(row[column])).DefaultIfEmpty(0).Max();

    private bool MayWrap(Cell cell, int column) =>
        !columns[column].Whole && (cell.IsWords || columns[column].Align == Align.Left || columns[column].Wraps);

    private static int WidestLine(string text) => text.Split('\n').Max(WordWrap.WidthOf);

    private static int LongestWord(string text) => text.Split([' ', '\n']).Max(WordWrap.WidthOf);

    private static void WriteRule(TextWriter output, int[] widths) =>
        output.WriteLine(new string('-', Across(widths)));

    private void WriteRow(TextWriter output, int[] widths, IReadOnlyList<Cell> cells, bool atBottom)
    {
        string[][] lines = [.. cells.Select((cell, i) => LinesOf(cell.Text, widths[i]))];
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

    // Only lines that are too wide are wrapped again, so that deliberate spaces stay.
    private static string[] LinesOf(string cell, int width) =>
        WidestLine(cell) <= width ? cell.Split('\n') : [.. WordWrap.Lines(cell, width, cutsWords: true)];

    // A row as a list: the first cell that is not empty, and below it the values under each other heading.
    private void WriteAsList(TextWriter output, int width)
    {
        foreach (IReadOnlyList<Cell> row in Cells)
        {
            bool isFirst = true;
            for (int i = 0; i < row.Count; i++)
            {
                string text = string.Join(' ', row[i].Text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
                if (text.Length == 0)
                {
                    continue;
                }

                string heading = string.Join(' ', Full[i].Split('\n'));
                WordWrap.WriteHanging(isFirst || heading.Length == 0 ? text : $"{heading}: {text}", output, width, isFirst ? "" : "    ", "      ");
                isFirst = false;
            }
        }
    }
}

/// <summary>One column of a <see cref="TextTable"/>.</summary>
/// <param name="Heading">Its heading; may have line ends.</param>
/// <param name="Align">Alignment of its cells; right-aligned cells are numbers, which are never broken.</param>
internal sealed record Column(string Heading, Align Align = Align.Left)
{
    /// <summary>The heading for a narrow table; null if there is no shorter one.</summary>
    public string? ShortHeading { get; init; }

    /// <summary>Whether its cells are running text, which is wrapped first.</summary>
    public bool Wraps { get; init; }

    /// <summary>Whether its cells are never broken, such as file names.</summary>
    public bool Whole { get; init; }
}

/// <summary>One cell of a <see cref="TextTable"/>.</summary>
/// <param name="Text">Its text; may have line ends.</param>
/// <param name="IsWords">Whether it is words in a column of numbers, which may be wrapped.</param>
internal readonly record struct Cell(string Text, bool IsWords)
{
    /// <summary>Words in a column of numbers.</summary>
    public static Cell Words(string text) => new(text, true);

    /// <summary>Converts plain text, which most cells are.</summary>
    public static implicit operator Cell(string text) => new(text, false);
}

/// <summary>The alignment of cells in a column.</summary>
internal enum Align
{
    /// <summary>Words.</summary>
    Left,

    /// <summary>Numbers.</summary>
    Right,
}
