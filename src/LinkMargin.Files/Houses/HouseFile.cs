using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Tables;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses;

/// <summary>Reads house files.</summary>
public static class HouseFile
{
    /// <summary>The format of house files. A file of an older version without it is also read.</summary>
    public const string Form = "linkmargin/house/1";

    /// <summary>Bytes that a house file may have.</summary>
    public const int MostBytes = YamlLimits.Bytes;

    /// <summary>Reads a file. Errors are returned as problems, never thrown.</summary>
    /// <param name="path">The file, as the person named it.</param>
    /// <param name="tables">The tables that materials, build-ups and radios are looked up in.</param>
    public static HouseParseResult Read(string path, MaterialTables tables)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(tables);
        ProblemList problems = [];
        Source source = new(path, problems);
        House? house = YamlText.Read(path, source) is { } text ? ReadText(text, source, tables) : null;
        return Sorted(house, problems, source);
    }

    /// <summary>Reads the text of a house file.</summary>
    /// <param name="text">The text.</param>
    /// <param name="fileName">The file's name in the problems.</param>
    /// <param name="tables">The tables that materials, build-ups and radios are looked up in.</param>
    public static HouseParseResult Parse(string text, string fileName, MaterialTables tables)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(fileName);
        ArgumentNullException.ThrowIfNull(tables);
        ProblemList problems = [];
        Source source = new(fileName, problems);
        return Sorted(ReadText(text, source, tables), problems, source);
    }

    /// <summary>Reads the bytes of a house file.</summary>
    /// <param name="bytes">The bytes, in UTF-8.</param>
    /// <param name="fileName">The file's name in the problems.</param>
    /// <param name="tables">The tables that materials, build-ups and radios are looked up in.</param>
    public static HouseParseResult Parse(ReadOnlySpan<byte> bytes, string fileName, MaterialTables tables)
    {
        ArgumentNullException.ThrowIfNull(fileName);
        ArgumentNullException.ThrowIfNull(tables);
        ProblemList problems = [];
        Source source = new(fileName, problems);
        House? house = YamlText.Decode(bytes, source) is { } text ? ReadText(text, source, tables) : null;
        return Sorted(house, problems, source);
    }

    private static House? ReadText(string text, Source source, MaterialTables tables) =>
        YamlTree.ParseMapping(text, source) is { } root ? new HouseReader(source, tables).Read(root) : null;

    private static HouseParseResult Sorted(House? house, ProblemList problems, Source source) =>
        new(
            problems.Any(p => p.Severity == Severity.Error) ? null : house,
            [.. problems.Distinct().OrderBy(p => p.Mark.Line).ThenBy(p => p.Mark.Column)])
        {
            Unit = source.BareUnit,
        };
}

/// <summary>The result of reading a house file.</summary>
/// <param name="House">The house; null exactly when there is an error.</param>
/// <param name="Problems">All errors and warnings, in the order of the file.</param>
public sealed record HouseParseResult(House? House, IReadOnlyList<Problem> Problems)
{
    /// <summary>The unit of the file's bare lengths, so that answers use it too.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Metre;

    /// <summary>How many warnings there are.</summary>
    public int WarningCount => Problems.Count(problem => problem.Severity == Severity.Warning);
}
