using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Writing;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Measurements;

/// <summary>Writes and reads the result of a fit, so that any command can use it. The tables are never edited.</summary>
public static class FittedFile
{
    /// <summary>Smaller correlations would be written as 0 with four decimals, so they are omitted.</summary>
    private const double LeastWritten = 0.00005;

    private static readonly JavaScriptEncoder Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;

    /// <summary>The text of a file of fitted losses.</summary>
    public static string Text(FittedLosses fitted)
    {
        ArgumentNullException.ThrowIfNull(fitted);
        StringBuilder text = new();
        void Line(FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
        Line($"{GeneratorMark.CommentLine}: losses fitted to measurements. Give this file to a command with --fitted.");
        Line($"# shift: loss of the material in this house minus its table loss; spread: one standard deviation of the shift,");
        Line($"# table-spread: the same before the fit; offset: the level that a pair of devices would show without any path loss.");
        Line($"form: {FittedReader.Form}");
        Line($"fitted: {Quoted(fitted.HouseName)}");
        Line($"measurements: {fitted.MeasurementCount}");
        Line($"materials:{(fitted.Materials.Count == 0 ? " []" : "")}");
        foreach (FittedMaterial m in fitted.Materials)
        {
            Line($"  - {{name: {m.Name}, table: {Figure(m.TableLossDb)} dB, shift: {Figure(m.ShiftDb)} dB, table-spread: {Figure(m.TableSpreadDb)} dB, spread: {Figure(m.SpreadDb)} dB}}");
        }

        Line($"devices:{(fitted.Devices.Count == 0 ? " []" : "")}");
        foreach (FittedDevice d in fitted.Devices)
        {
            Line($"  - {{name: {Quoted(d.Name)}, offset: {d.OffsetDbm:0.####} dBm, spread: {d.SpreadDb:0.####} dB, measurements: {d.MeasurementCount}}}");
        }

        (int I, int J)[] pairs =
        [
            .. Enumerable.Range(0, fitted.Materials.Count).SelectMany(i => Enumerable.Range(0, i).Select(j => (j, i)))
                .Where(pair => Math.Abs(fitted.Correlation(pair.j, pair.i)) >= LeastWritten),
        ];
        Line($"correlations:{(pairs.Length == 0 ? " []" : "")}");
        foreach ((int i, int j) in pairs)
        {
            Line($"  - {{between: [{fitted.Materials[i].Name}, {fitted.Materials[j].Name}], value: {fitted.Correlation(i, j):0.####}}}");
        }

        if (fitted.Links.Count > 0)
        {
            Line($"# For each measured link: its extra loss beyond the fitted losses. Positions in metres.");
            Line($"links:");
            foreach (FittedLink link in fitted.Links)
            {
                Line($"  - {{from: {Written(link.From)}, to: {Written(link.To)}, shift: {Figure(link.ShiftDb)} dB, spread: {Figure(link.SpreadDb)} dB}}");
            }
        }

        return GeneratorMark.Sealed(text.ToString());
    }

    /// <summary>Reads a file and checks it against a house. Errors are returned as problems, never thrown.</summary>
    /// <param name="path">The file, as the person named it.</param>
    /// <param name="house">The house it is applied to, with its table losses.</param>
    public static FittedParseResult Read(string path, House house)
    {
        ArgumentNullException.ThrowIfNull(path);
        ProblemList problems = [];
        Source source = SourceOf(path, problems);
        return YamlText.Read(path, source) is { } text ? Read(text, house, source, problems) : new(null, [.. problems]);
    }

    /// <summary>Reads the text of a file.</summary>
    /// <param name="text">The text.</param>
    /// <param name="fileName">The file's name in the problems.</param>
    /// <param name="house">The house it is applied to, with its table losses.</param>
    public static FittedParseResult Parse(string text, string fileName, House house)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(fileName);
        ProblemList problems = [];
        return Read(text, house, SourceOf(fileName, problems), problems);
    }

    /// <summary>Reads the bytes of a file.</summary>
    /// <param name="bytes">The bytes, in UTF-8.</param>
    /// <param name="fileName">The file's name in the problems.</param>
    /// <param name="house">The house it is applied to.</param>
    public static FittedParseResult Parse(ReadOnlySpan<byte> bytes, string fileName, House house)
    {
        ArgumentNullException.ThrowIfNull(fileName);
        ProblemList problems = [];
        Source source = SourceOf(fileName, problems);
        return YamlText.Decode(bytes, source) is { } text ? Read(text, house, source, problems) : new(null, [.. problems]);
    }

    private static FittedParseResult Read(string text, House house, Source source, ProblemList problems)
    {
        ArgumentNullException.ThrowIfNull(house);
        FittedLosses? fitted = YamlTree.ParseMapping(text, source) is { } root ? new FittedReader(source, house).Read(root) : null;
        return new FittedParseResult(
            problems.Any(p => p.Severity == Severity.Error) ? null : fitted,
            [.. problems.Distinct().OrderBy(p => p.Mark.Line).ThenBy(p => p.Mark.Column)]);
    }

    private static Source SourceOf(string file, ProblemList problems) => new(file, problems)
    {
        Example = "fitted: Name",
        Start = "'linkmargin fit HOUSE MEASUREMENTS' writes one",
        Usual = "a file of fitted losses usually has a few kilobytes",
    };

    private static string Written(Point3 place) => $"[{Figure(place.X)}, {Figure(place.Y)}, {Figure(place.Z)}]";

    // Four decimals, and no sign before a zero.
    private static string Figure(double value) => (Math.Round(value, 4) + 0.0).ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>A quoted name; a JSON string is valid YAML.</summary>
    private static string Quoted(string name) => $"\"{JsonEncodedText.Encode(name, Encoder)}\"";
}

/// <summary>The result of reading a fitted file.</summary>
/// <param name="Fitted">Its content; null exactly when there is an error.</param>
/// <param name="Problems">All errors and warnings, in the order of the file.</param>
public sealed record FittedParseResult(FittedLosses? Fitted, IReadOnlyList<Problem> Problems);
