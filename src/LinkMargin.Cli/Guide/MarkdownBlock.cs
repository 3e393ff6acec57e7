using System.Text.RegularExpressions;

namespace LinkMargin.Cli.Guide;

/// <summary>
/// A block of Markdown. The guide uses a small part of the language: headings, paragraphs, flat lists, tables, code blocks and
/// one-line comments; a test enforces that.
/// </summary>
/// <param name="Kind">What it is.</param>
/// <param name="Lines">A heading's or paragraph's text in one line; a list's items; a table's or a code block's lines.</param>
internal sealed partial record MarkdownBlock(MarkdownKind Kind, IReadOnlyList<string> Lines)
{
    private const string Fence = "```", CodeIndent = "    ";

    /// <summary>Depth of a heading, from 1; 0 for other blocks.</summary>
    public int Depth { get; init; }

    /// <summary>The blocks of a text, in order, without its comments.</summary>
    public static IEnumerable<MarkdownBlock> In(string markdown)
    {
        string[] lines = markdown.ReplaceLineEndings("\n").Split('\n');
        for (int i = 0; i < lines.Length;)
        {
            string line = lines[i];
            if (line.Trim().Length == 0 || line.StartsWith("<!--", StringComparison.Ordinal))
            {
                i++;
            }
            else if (line.StartsWith(Fence, StringComparison.Ordinal))
            {
                int end = Array.IndexOf(lines, Fence, i + 1);
                end = end < 0 ? lines.Length : end;
                yield return new(MarkdownKind.Code, lines[(i + 1)..end]);
                i = end + 1;
            }
            else if (line.StartsWith(CodeIndent, StringComparison.Ordinal))
            {
                int end = EndOf(lines, i, next => next.StartsWith(CodeIndent, StringComparison.Ordinal));
                yield return new(MarkdownKind.Code, [.. lines[i..end].Select(code => code[CodeIndent.Length..])]);
                i = end;
            }
            else if (line[0] == '#')
            {
                int depth = line.TakeWhile(mark => mark == '#').Count();
                yield return new(MarkdownKind.Heading, [line[depth..].Trim()]) { Depth = depth };
                i++;
            }
            else if (line[0] == '|')
            {
                int end = EndOf(lines, i, next => next.StartsWith('|'));
                yield return new(MarkdownKind.Table, lines[i..end]);
                i = end;
            }
            else if (Item().IsMatch(line))
            {
                int end = EndOf(lines, i, next => Item().IsMatch(next) || (next.StartsWith(' ') && next.Trim().Length > 0));
                yield return new(MarkdownKind.List, ItemsOf(lines[i..end]));
                i = end;
            }
            else
            {
                int end = EndOf(lines, i, next => next.Trim().Length > 0 && !Starts(next));
                yield return new(MarkdownKind.Paragraph, [string.Join(' ', lines[i..end].Select(part => part.Trim()))]);
                i = end;
            }
        }
    }

    /// <summary>The cells of a table row, as written.</summary>
    public static string[] CellsOf(string row) =>
        [.. CellEnd().Split(row.Trim().Trim('|')).Select(cell => cell.Replace("\\|", "|", StringComparison.Ordinal).Trim())];

    private static bool Starts(string line) =>
        line.StartsWith(Fence, StringComparison.Ordinal) || line.StartsWith("<!--", StringComparison.Ordinal)
        || line[0] is '#' or '|' || Item().IsMatch(line);

    private static int EndOf(string[] lines, int start, Func<string, bool> goesOn)
    {
        int end = start + 1;
        while (end < lines.Length && goesOn(lines[end]))
        {
            end++;
        }

        return end;
    }

    private static List<string> ItemsOf(string[] lines)
    {
        List<string> items = [];
        foreach (string line in lines)
        {
            if (Item().IsMatch(line))
            {
                items.Add(line.Trim());
            }
            else
            {
                items[^1] += " " + line.Trim();
            }
        }

        return items;
    }

    [GeneratedRegex(@"^(\*|[0-9]+\.) ")]
    private static partial Regex Item();

    [GeneratedRegex(@"(?<!\\)\|")]
    private static partial Regex CellEnd();
}

/// <summary>Kinds of <see cref="MarkdownBlock"/>.</summary>
internal enum MarkdownKind
{
    /// <summary>A heading.</summary>
    Heading,

    /// <summary>Running text.</summary>
    Paragraph,

    /// <summary>Items that start with a star or a number.</summary>
    List,

    /// <summary>A table with headings in its first row.</summary>
    Table,

    /// <summary>Text that is shown unchanged.</summary>
    Code,
}
