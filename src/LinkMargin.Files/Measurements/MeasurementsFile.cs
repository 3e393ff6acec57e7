using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Measurements;

/// <summary>
/// Reads measurements files: separated values, a heading line, then one line for each measured level. README.md lists the
/// columns.
/// </summary>
public static class MeasurementsFile
{
    private static readonly Mark Start = new(1, 1);

    /// <summary>Reads a file. Errors are returned as problems, never thrown.</summary>
    /// <param name="path">The file, as the person named it.</param>
    /// <param name="house">The house that was measured.</param>
    /// <param name="unit">The unit of bare lengths if the heading names none: that of the house file.</param>
    public static MeasurementsParseResult Read(string path, House house, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(house);
        ProblemList problems = [];
        Source source = SourceOf(path, problems, unit);
        IReadOnlyList<Measurement>? measurements = YamlText.Read(path, source) is { } text ? ReadText(text, house, unit, source) : null;
        return Sorted(measurements, problems);
    }

    /// <summary>Reads the text of a file.</summary>
    /// <param name="text">The text.</param>
    /// <param name="fileName">The file's name in the problems.</param>
    /// <param name="house">The house that was measured.</param>
    /// <param name="unit">The unit of bare lengths if the heading names none.</param>
    public static MeasurementsParseResult Parse(string text, string fileName, House house, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(fileName);
        ArgumentNullException.ThrowIfNull(house);
        ProblemList problems = [];
        return Sorted(ReadText(text, house, unit, SourceOf(fileName, problems, unit)), problems);
    }

    private static IReadOnlyList<Measurement>? ReadText(string text, House house, LengthUnit unit, Source source)
    {
        (IReadOnlyList<IReadOnlyList<CsvCell>> lines, char separator) = CsvLines.Read(text.TrimStart('\uFEFF'), source);
        if (lines.Count == 0)
        {
            source.Error(Start, "this file holds no lines; 'linkmargin fit HOUSE --template FILE' writes one to fill in");
            return null;
        }

        MeasurementHeader? header = MeasurementHeader.TryRead(lines[0], source);
        int first = header is null ? 0 : 1;
        if (header is null && IsPlain(lines[0]))
        {
            source.Warning(lines[0][0].Mark, $"the line of headings is missing; the fields are assumed to be {Order(separator)}");
            header = MeasurementHeader.OfTemplate();
        }

        if (header is null)
        {
            source.Error(lines[0][0].Mark, $"the first line must name the columns, and none of {Quote.Of(string.Join(separator, lines[0].Select(c => c.Text)))} is one; put this line above: {Order(separator)}");
            return null;
        }

        if (lines.Count - first > MeasurementLimits.MostRows)
        {
            source.Error(lines[first + MeasurementLimits.MostRows][0].Mark, FormattableString.Invariant(
                $"this file has {lines.Count - first} lines, more than the allowed {MeasurementLimits.MostRows}; remove some"));
            return null;
        }

        MeasurementRowReader reader = new(header, new MeasurementPlaces(house, unit, source), source);
        MeasurementRow[] rows = [.. lines.Skip(first).Select(reader.Read).OfType<MeasurementRow>()];
        if (reader.Untaken > 0)
        {
            source.Warning(Start, FormattableString.Invariant($"{reader.Untaken} lines have no level yet and are ignored"));
        }

        IReadOnlyList<Measurement> measurements = new MeasurementGathering(house, source).Gather(rows);
        if (measurements.Count > MeasurementLimits.MostMeasurements)
        {
            source.Error(Start, FormattableString.Invariant(
                $"this file has measurements of {measurements.Count} links, more than the {MeasurementLimits.MostMeasurements} that a fit can use; remove some"));
        }

        if (measurements.Count == 0 && !source.Problems.Any(p => p.Severity == Severity.Error))
        {
            source.Error(Start, "this file holds no measurement; write a level, or 'not heard', under 'received'");
        }

        return measurements;
    }

    /// <summary>Whether a first line is not a heading but a line in the order of the template.</summary>
    private static bool IsPlain(IReadOnlyList<CsvCell> line) =>
        line.Count == MeasurementHeader.TemplateOrder.Count
        && (Quantity.LevelDbm.Parse(DecimalComma.AsPoint(line[2].Text)).Fault is null || line[2].Text.Equals(MeasurementRowReader.NotHeard, StringComparison.OrdinalIgnoreCase));

    private static string Order(char separator) => string.Join(separator, MeasurementHeader.TemplateOrder.Select(column => column.Heading));

    private static Source SourceOf(string file, ProblemList problems, LengthUnit unit) => new(file, problems)
    {
        BareUnit = unit,
        Usual = "a measurements file usually has a few kilobytes",
    };

    private static MeasurementsParseResult Sorted(IReadOnlyList<Measurement>? measurements, ProblemList problems) => new(
        problems.Any(p => p.Severity == Severity.Error) ? null : measurements,
        [.. problems.Distinct().OrderBy(p => p.Mark.Line).ThenBy(p => p.Mark.Column)]);
}

/// <summary>The result of reading a measurements file.</summary>
/// <param name="Measurements">The measurements, repeated ones combined; null exactly when there is an error.</param>
/// <param name="Problems">All errors and warnings, in the order of the file.</param>
public sealed record MeasurementsParseResult(IReadOnlyList<Measurement>? Measurements, IReadOnlyList<Problem> Problems);

/// <summary>Limits of a measurements file. Checks and messages both use them.</summary>
internal static class MeasurementLimits
{
    /// <summary>Rows of one file.</summary>
    public const int MostRows = 20_000;

    /// <summary>Links after repeated rows are combined.</summary>
    public const int MostMeasurements = 2_000;

    /// <summary>Two ends closer than this are at the same place.</summary>
    public const double OnePlaceMetres = 0.05;

    /// <summary>A received level: from below any receiver's noise to a device right beside its transmitter.</summary>
    public static QuantityRange Received { get; } = new(-130, 0, "dBm");
}
