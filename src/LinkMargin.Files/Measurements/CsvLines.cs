using System.Text;
using CsvHelper;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Writing;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Measurements;

/// <summary>
/// Reads the lines of a separated-values file, each field with its position. The separator is a comma, a semicolon or a tab:
/// whichever is most frequent in the first line, unless that line sets it with <c>sep=</c>, as some spreadsheets write.
/// </summary>
internal static class CsvLines
{
    private const string Hint = "sep=";

    /// <summary>Starts a comment line.</summary>
    private const char Remark = '#';

    private static readonly char[] Separators = [',', ';', '\t'];

    /// <summary>The lines with content, and the separator of their fields.</summary>
    public static (IReadOnlyList<IReadOnlyList<CsvCell>> Lines, char Separator) Read(string text, Source source)
    {
        char separator = SeparatorOf(text);
        CsvReaderOptions options = new()
        {
            HasHeader = false,
            Separator = separator,
            TrimWhitespace = true,
            TrackLineNumbers = true,
            CommentPrefix = Remark,

            // No field spans lines here, so an unclosed quote must not swallow the rest.
            AllowLineBreaksInQuotes = false,
        };
        List<IReadOnlyList<CsvCell>> lines = [];
        using CsvReader reader = CsvReader.FromText(text, options);
        while (reader.Read())
        {
            int line = checked((int)reader.LineNumber);
            List<CsvCell> cells = Cells(reader, line, source);
            bool isHint = line == 1 && cells[0].Text.StartsWith(Hint, StringComparison.OrdinalIgnoreCase);
            if (!isHint && cells.Any(cell => cell.Text.Length > 0))
            {
                lines.Add(cells);
            }
        }

        return (lines, separator);
    }

    private static List<CsvCell> Cells(CsvReader reader, int line, Source source)
    {
        List<CsvCell> cells = [];
        int column = 1;
        for (int i = 0; i < reader.FieldCount; i++)
        {
            string raw = Encoding.UTF8.GetString(reader.GetRawSpan(i)), plain = raw.Trim();
            Mark mark = new(line, column + raw.Length - raw.TrimStart().Length);
            if (plain.StartsWith('"') && (plain.Length == 1 || !plain.EndsWith('"')))
            {
                source.Error(mark, $"a quote opened here is not closed on this line: {Quote.Of(plain)}; close it, or remove the quotes");
            }

            cells.Add(new CsvCell(SpreadsheetText.Read(NameText.Normal(reader.GetString(i))), mark));
            column += raw.Length + 1;
        }

        return cells;
    }

    private static char SeparatorOf(string text)
    {
        string first = text.Split('\n', '\r').FirstOrDefault(line => line.Trim().Length > 0 && line[0] != Remark) ?? "";
        if (first.StartsWith(Hint, StringComparison.OrdinalIgnoreCase) && first.Length > Hint.Length && Separators.Contains(first[Hint.Length]))
        {
            return first[Hint.Length];
        }

        return Separators.MaxBy(candidate => first.Count(c => c == candidate));
    }
}

/// <summary>One field of a line: its text without quotes and spaces around it, and its position.</summary>
internal readonly record struct CsvCell(string Text, Mark Mark);
