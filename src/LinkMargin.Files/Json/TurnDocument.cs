using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths;

namespace LinkMargin.Files.Json;

/// <summary>Where a path leaves its straight line, as JSON.</summary>
/// <param name="What">
/// What throws it back: <c>wall</c>, <c>fixture</c>, <c>floor</c> or <c>ceiling</c>; or what it goes through or round off the
/// straight line: <c>opening</c>, <c>wall end</c> or <c>stair void</c>.
/// </param>
/// <param name="Name">Which one; of a floor, a ceiling or a stair void, its level.</param>
/// <param name="Level">The level it belongs to; a stair void belongs to the level below it.</param>
/// <param name="AtM">From the spot along the path, metres.</param>
/// <param name="IncidenceDeg">Angle to the normal of what throws it back, degrees; left out where it is not thrown back.</param>
public sealed record TurnDocument(string What, string Name, string Level, double AtM, double? IncidenceDeg)
{
    /// <summary>The word for a kind of turn.</summary>
    public static string WordFor(TurnKind kind) => kind switch
    {
        TurnKind.Wall => "wall",
        TurnKind.Fixture => "fixture",
        TurnKind.Floor => "floor",
        TurnKind.Ceiling => "ceiling",
        TurnKind.Opening => "opening",
        TurnKind.WallEnd => "wall end",
        TurnKind.WallCorner => "wall corner",
        TurnKind.FixtureCorner => "fixture corner",
        TurnKind.StairVoid => "stair void",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "This is not a kind of turn."),
    };

    internal static TurnDocument Of(House house, PathTurn turn) =>
        new(WordFor(turn.Kind), turn.Name, house.Levels[turn.LevelIndex].Name, turn.DistanceMetres, turn.IncidenceDegrees);
}
