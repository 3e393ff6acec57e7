using System.Text.RegularExpressions;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Cli.Guide;

/// <summary>Lays out Markdown as plain text: wrapped, tables in columns, headings underlined, emphasis marks removed.</summary>
internal static partial class MarkdownText
{
    private const string CodeIndent = "    ";

    /// <summary>Writes a text.</summary>
    /// <param name="markdown">The text, in the part of Markdown that <see cref="MarkdownBlock"/> reads.</param>
    /// <param name="output">Where to write.</param>
    /// <param name="width">The greatest width; lines of code are never broken.</param>
    public static void Write(string markdown, TextWriter output, int width)
    {
        bool isFirst = true;
        foreach (MarkdownBlock block in MarkdownBlock.In(markdown))
        {
            if (!isFirst)
            {
                output.WriteLine();
            }

            isFirst = false;
            Write(block, output, width);
        }
    }

    /// <summary>A line of Markdown as plain text: code is put in quotes, as names are in the program's messages.</summary>
    public static string Plain(string markdown) => Marks().Replace(markdown, mark =>
        mark.Groups["code"] is { Success: true, Value: var code } ? Quoted(code)
        : mark.Groups["escaped"] is { Success: true, Value: var escaped } ? escaped
        : Plain(mark.Groups["text"].Value));

    private static void Write(MarkdownBlock block, TextWriter output, int width)
    {
        switch (block.Kind)
        {
            case MarkdownKind.Heading:
                WriteHeading(Plain(block.Lines[0]), block.Depth, output, width);
                break;
            case MarkdownKind.List:
                foreach (string item in block.Lines)
                {
                    int mark = item.IndexOf(' ', StringComparison.Ordinal) + 1;
                    WordWrap.WriteHanging(Plain(item[mark..].TrimStart()), output, width, item[..mark], new string(' ', mark));
                }

                break;
            case MarkdownKind.Table:
                TableOf(block).WriteTo(output, width);
                break;
            case MarkdownKind.Code:
                string indent = block.Lines.All(line => CodeIndent.Length + WordWrap.WidthOf(line) <= width) ? CodeIndent : "";
                foreach (string line in block.Lines)
                {
                    output.WriteLine((indent + line).TrimEnd());
                }

                break;
            default:
                WordWrap.Write(Plain(block.Lines[0]), output, width);
                break;
        }
    }

    private static void WriteHeading(string text, int depth, TextWriter output, int width)
    {
        string[] lines = [.. WordWrap.Lines(text, width)];
        foreach (string line in lines)
        {
            output.WriteLine(line);
        }

        if (depth <= 2)
        {
            output.WriteLine(new string(depth == 1 ? '=' : '-', lines.Max(WordWrap.WidthOf)));
        }
    }

    // The second line of a table only separates headings from rows.
    private static TextTable TableOf(MarkdownBlock block)
    {
        string[] headings = MarkdownBlock.CellsOf(block.Lines[0]);
        TextTable table = new([.. headings.Select((heading, i) => new Column(Plain(heading)) { Wraps = i > 0 })]);
        foreach (string row in block.Lines.Skip(2))
        {
            string[] cells = MarkdownBlock.CellsOf(row);
            table.Add([.. headings.Select((_, i) => new Cell(i < cells.Length ? PlainCell(cells[i]) : "", IsWords: true))]);
        }

        return table;
    }

    // A cell that holds only code needs no quotes.
    private static string PlainCell(string cell) =>
        OneCode().Match(cell) is { Success: true } match ? match.Groups[1].Value : Plain(cell);

    private static string Quoted(string code) =>
        code.Contains('\'', StringComparison.Ordinal) || (code.StartsWith("--", StringComparison.Ordinal) && !code.Contains(' ', StringComparison.Ordinal))
            ? code
            : $"'{code}'";

    [GeneratedRegex(@"`(?<code>[^`]+)`|\*\*(?<text>.+?)\*\*|\*(?<text>[^*\s][^*]*)\*|\[(?<text>(?:[^\]`]|`[^`]*`)+)\]\([^)]*\)|\\(?<escaped>[^A-Za-z0-9\s])")]
    private static partial Regex Marks();

    [GeneratedRegex("^`([^`]+)`$")]
    private static partial Regex OneCode();
}
