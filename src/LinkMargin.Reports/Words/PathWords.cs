using System.Globalization;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Files.Json;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Reports.Words;

/// <summary>Paths and obstacles in an installer's words; the same in tables and on pictures.</summary>
internal static class PathWords
{
    /// <summary>What a path passes.</summary>
    /// <param name="path">The path.</param>
    /// <param name="house">The house.</param>
    /// <param name="seat">The seat it goes to.</param>
    public static string Of(PathBudget path, House house, Seat seat) => path.Path.Kind switch
    {
        PathKind.Direct => "direct path",
        PathKind.Diffracted when path.Turns.Count == 0 => "around edges farther from the direct path",
        PathKind.Reflected or PathKind.Diffracted => string.Join(", then ", path.Turns.Select(Of)),
        PathKind.Diffuse => $"diffuse field {InRoomOf(house, seat)}",
        _ => throw new ArgumentOutOfRangeException(nameof(path), path.Path.Kind, "This is not a kind of path."),
    };

    /// <summary>A path's share of the power that arrives.</summary>
    public static string ShareOf(LinkBudget budget, PathBudget path) =>
        string.Create(CultureInfo.InvariantCulture, $"{100 * budget.ShareOf(path):0.0} %");

    /// <summary>
    /// An obstacle, with what it is where its name does not say so; a floor by its place, since its layers are named beside.
    /// </summary>
    public static string Of(Crossing crossing, House house)
    {
        if (crossing.Kind is ObstacleKind.FloorLayer or ObstacleKind.Joists)
        {
            return $"{CrossingDocument.WordFor(crossing.Kind)} above {house.Levels[crossing.LevelIndex].Name}";
        }

        string word = CrossingDocument.WordFor(crossing.Kind);
        string[] saysSo = crossing.Kind == ObstacleKind.Opening ? ["door", "window", "gap", "hatch", "opening"] : [word];
        return saysSo.Any(said => Says(crossing.Name, said)) ? crossing.Name : $"{word} {crossing.Name}";
    }

    /// <summary>A material; one made of a row to some depth is named by both, the depth in the house's unit.</summary>
    public static string NameOf(Material material, LengthFormat lengths) =>
        lengths.InFeet && material is { ScaledFrom: { } row, ThicknessMetres: { } depth } ? $"{row} {lengths.Exact(depth)}" : material.Name;

    private static string Of(PathTurn turn) => turn.Kind switch
    {
        TurnKind.Wall => $"reflected by {Wall(turn.Name)}",
        TurnKind.Fixture => $"reflected by '{turn.Name}'",
        TurnKind.Floor => $"reflected by the floor of {turn.Name}",
        TurnKind.Ceiling => $"reflected by the ceiling of {turn.Name}",
        TurnKind.Opening => $"through {turn.Name}",
        TurnKind.WallEnd => $"diffracted at the end of {Wall(turn.Name)}",
        TurnKind.WallCorner => $"diffracted at the corner of {Wall(turn.Name)}",
        TurnKind.FixtureCorner => $"diffracted at '{turn.Name}'",
        TurnKind.StairVoid => $"through the stair void above {turn.Name}",
        _ => throw new ArgumentOutOfRangeException(nameof(turn), turn.Kind, "This is not a kind of turn."),
    };

    /// <summary>A thing by its quoted name, with what it is where the name does not say so.</summary>
    public static string Named(string kind, string name) => Says(name, kind) ? $"'{name}'" : $"{kind} '{name}'";

    private static string Wall(string name) => Named("wall", name);

    private static string InRoomOf(House house, Seat seat) =>
        house.Levels[seat.LevelIndex].Rooms.FirstOrDefault(room => room.Outline.Contains(seat.Plan)) is { } room
            ? $"in {room.Name}"
            : $"on {house.Levels[seat.LevelIndex].Name}";

    private static bool Says(string name, string word) =>
        name.Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries).Contains(word, StringComparer.OrdinalIgnoreCase);
}
