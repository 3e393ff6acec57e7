using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Readings;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Readings;

/// <summary>
/// Reads files of readings: separated values, a heading line, a line for each level that was read. README.md lists the
/// columns.
/// </summary>
public static class ReadingsFile
{
    private static readonly Mark Start = new(1, 1);

    /// <summary>Reads a file. Whatever is wrong with it or in it is in the problems; nothing is thrown for it.</summary>
    /// <param name="path">The file, as the person named it.</param>
    /// <param name="house">The house it was taken in.</param>
    /// <param name="unit">The unit of its bare lengths where a heading names none: the house file's.</param>
    public static ReadingsReading Read(string path, House house, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(house);
        ProblemList problems = [];
        Source source = SourceOf(path, problems, unit);
        IReadOnlyList<Reading>? readings = YamlText.Read(path, source) is { } text ? ReadText(text, house, unit, source) : null;
        return Sorted(readings, problems);
    }

    /// <summary>Reads the text of a file.</summary>
    /// <param name="text">The text.</param>
    /// <param name="fileName">What the problems call it.</param>
    /// <param name="house">The house it was taken in.</param>
    /// <param name="unit">The unit of its bare lengths where a heading names none.</param>
    public static ReadingsReading Parse(string text, string fileName, House house, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(fileName);
        ArgumentNullException.ThrowIfNull(house);
        ProblemList problems = [];
        return Sorted(ReadText(text, house, unit, SourceOf(fileName, problems, unit)), problems);
    }

    private static IReadOnlyList<Reading>? ReadText(string text, House house, LengthUnit unit, Source source)
    {
        (IReadOnlyList<IReadOnlyList<CsvCell>> lines, char separator) = CsvLines.Read(text.TrimStart('\uFEFF'), source);
        if (lines.Count == 0)
        {
            source.Mistake(Start, "this file holds no lines; 'linkmargin fit HOUSE --template FILE' writes one to fill in");
            return null;
        }

        ReadingHeader? header = ReadingHeader.TryRead(lines[0], source);
        int first = header is null ? 0 : 1;
        if (header is null && IsPlain(lines[0]))
        {
            source.Odd(lines[0][0].Mark, $"the line of headings is missing; the fields are taken for {Order(separator)}");
            header = ReadingHeader.OfTemplate();
        }

        if (header is null)
        {
            source.Mistake(lines[0][0].Mark, $"the first line must name the columns, and none of {Quote.Of(string.Join(separator, lines[0].Select(c => c.Text)))} is one; put this line above: {Order(separator)}");
            return null;
        }

        if (lines.Count - first > ReadingLimits.MostRows)
        {
            source.Mistake(lines[first + ReadingLimits.MostRows][0].Mark, FormattableString.Invariant(
                $"this file has {lines.Count - first} lines, more than the {ReadingLimits.MostRows} that are read; leave some out"));
            return null;
        }

        ReadingRowReader reader = new(header, new ReadingPlaces(house, unit, source), source);
        ReadingRow[] rows = [.. lines.Skip(first).Select(reader.Read).OfType<ReadingRow>()];
        if (reader.Untaken > 0)
        {
            source.Odd(Start, FormattableString.Invariant($"{reader.Untaken} lines have no level yet and are left out"));
        }

        IReadOnlyList<Reading> readings = new ReadingGathering(house, source).Gather(rows);
        if (readings.Count > ReadingLimits.MostReadings)
        {
            source.Mistake(Start, FormattableString.Invariant(
                $"this file has readings of {readings.Count} links, more than the {ReadingLimits.MostReadings} that are fitted to; leave some out"));
        }

        if (readings.Count == 0 && !source.Problems.Any(p => p.Severity == Severity.Mistake))
        {
            source.Mistake(Start, "this file holds no reading; write a level, or 'not heard', under 'received'");
        }

        return readings;
    }

    /// <summary>Whether a first line without headings can only be a line of the template.</summary>
    private static bool IsPlain(IReadOnlyList<CsvCell> line) =>
        line.Count == ReadingHeader.TemplateOrder.Count
        && (Quantity.LevelDbm.Parse(DecimalComma.AsPoint(line[2].Text)).Fault is null || line[2].Text.Equals(ReadingRowReader.NotHeard, StringComparison.OrdinalIgnoreCase));

    private static string Order(char separator) => string.Join(separator, ReadingHeader.TemplateOrder.Select(column => column.Heading));

    private static Source SourceOf(string file, ProblemList problems, LengthUnit unit) => new(file, problems)
    {
        BareUnit = unit,
        Usual = "ten minutes of readings take a few kilobytes",
    };

    private static ReadingsReading Sorted(IReadOnlyList<Reading>? readings, ProblemList problems) => new(
        problems.Any(p => p.Severity == Severity.Mistake) ? null : readings,
        [.. problems.Distinct().OrderBy(p => p.Mark.Line).ThenBy(p => p.Mark.Column)]);
}
