using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Tables;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses;

/// <summary>Reads house files.</summary>
public static class HouseFile
{
    /// <summary>The form of house files. A file without one, of an older version, is read as well.</summary>
    public const string Form = "linkmargin/house/1";

    /// <summary>Reads a file. Whatever is wrong with it or in it is in the problems; nothing is thrown for it.</summary>
    /// <param name="path">The file, as the person named it.</param>
    /// <param name="tables">The words for materials, build-ups and radios.</param>
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
    /// <param name="fileName">What the problems call it.</param>
    /// <param name="tables">The words for materials, build-ups and radios.</param>
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
    /// <param name="fileName">What the problems call it.</param>
    /// <param name="tables">The words for materials, build-ups and radios.</param>
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
/// <param name="Problems">All errors and all that looks wrong, in the order of the file.</param>
public sealed record HouseParseResult(House? House, IReadOnlyList<Problem> Problems)
{
    /// <summary>The unit of the file's bare lengths, so that answers can be given in the words of the question.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Metre;

    /// <summary>How many warnings there are.</summary>
    public int WarningCount => Problems.Count(problem => problem.Severity == Severity.Warning);
}
