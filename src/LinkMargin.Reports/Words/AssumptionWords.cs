using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Sensitivity;
using LinkMargin.Files.Tables;

namespace LinkMargin.Reports.Words;

/// <summary>An assumption of a house file, in words.</summary>
/// <param name="house">The house.</param>
internal sealed class AssumptionWords(House house)
{
    /// <summary>What it is about, such as <c>wall 'spine' (living)</c>.</summary>
    public string Subject(Unknown unknown) => unknown switch
    {
        { Kind: UnknownKind.Floor, LevelIndex: int level } => $"floor above {house.Levels[level].Name}",
        { Name: { } name, LevelIndex: int level } => $"{PathWords.Named(Thing(unknown.Kind), name)} ({house.Levels[level].Name})",
        { Kind: UnknownKind.Walls } => $"all walls of {unknown.Assumed}",
        { Kind: UnknownKind.Openings } => $"all doors and windows of {unknown.Assumed}",
        _ => $"all fixtures of {unknown.Assumed}",
    };

    /// <summary>The same as a heading, where what is assumed is described below it.</summary>
    public string Heading(Unknown unknown) => unknown switch
    {
        { Kind: UnknownKind.Floor } or { Name: not null, LevelIndex: not null } => Subject(unknown),
        { Kind: UnknownKind.Walls } => "all walls of this kind",
        { Kind: UnknownKind.Openings } => "all doors and windows like this",
        _ => "all fixtures of this kind",
    };

    /// <summary>What a row of the tables is, in words; the row's name where it has none, as a door's <c>shut</c>.</summary>
    public static string Described(MaterialTables tables, UnknownKind kind, string row)
    {
        string words = kind == UnknownKind.Floor
            ? tables.BuildUps.TryGetValue(row, out FloorBuildUp? buildUp) ? buildUp.Description : ""
            : tables.Materials.TryGetValue(row, out Material? material) ? material.Description : "";
        return words.Length > 0 ? words : row;
    }

    /// <summary>How an alternative differs from what is assumed: all of it or, of a floor, the layers that are not the same.</summary>
    public static string Instead(MaterialTables tables, UnknownKind kind, string assumed, string row)
    {
        string words = Described(tables, kind, row);
        string[] other = kind == UnknownKind.Floor ? [.. words.Split(", ").Except(Described(tables, kind, assumed).Split(", "))] : [];
        return other.Length > 0 ? string.Join(", ", other) : words;
    }

    /// <summary>How somebody finds out on site; a phrase that goes after the subject.</summary>
    public static string HowToCheck(Unknown unknown) => unknown.Kind switch
    {
        UnknownKind.Walls => "measure the thickness in a doorway, knock on it, and hold a magnet to it: foil and metal lath hide behind plaster",
        UnknownKind.Openings => "look at the edge and the maker's mark of the glass or leaf, and hold a magnet to it",
        UnknownKind.Fixtures => "look inside and behind",
        UnknownKind.Floor => "look at an open edge, such as a hatch, a stairwell or a loose board, for foil, heating plates and screed",
        _ => "keep it as described during play",
    };

    private static string Thing(UnknownKind kind) => kind switch
    {
        UnknownKind.Walls => "wall",
        UnknownKind.Openings => "opening",
        UnknownKind.Fixtures => "fixture",
        _ => "door",
    };
}
