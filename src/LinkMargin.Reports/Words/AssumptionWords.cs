using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Sensitivity;

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
