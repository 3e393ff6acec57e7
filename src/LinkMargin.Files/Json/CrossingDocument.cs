using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Files.Json;

/// <summary>One obstacle on a path, as JSON.</summary>
/// <param name="What"><c>wall</c>, <c>opening</c>, <c>floor</c>, <c>joists</c> or <c>fixture</c>.</param>
/// <param name="Name">Which one.</param>
/// <param name="Material">What it is made of there.</param>
/// <param name="Level">The level it belongs to; a floor belongs to the level below it.</param>
/// <param name="AtM">From the spot along the path, metres.</param>
/// <param name="IncidenceDeg">Angle to the surface's normal, degrees.</param>
/// <param name="Share">How much of the table loss's geometry applies.</param>
/// <param name="LossDb">What it takes away, dB.</param>
public sealed record CrossingDocument(
    string What,
    string Name,
    string Material,
    string Level,
    double AtM,
    double IncidenceDeg,
    double Share,
    double LossDb)
{
    /// <summary>The word for a kind of obstacle.</summary>
    public static string WordFor(ObstacleKind kind) => kind switch
    {
        ObstacleKind.Wall => "wall",
        ObstacleKind.Opening => "opening",
        ObstacleKind.FloorLayer => "floor",
        ObstacleKind.Joists => "joists",
        ObstacleKind.Fixture => "fixture",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "This is not a kind of obstacle."),
    };

    internal static CrossingDocument Of(House house, Crossing crossing, double lossDb) => new(
        WordFor(crossing.Kind),
        crossing.Name,
        crossing.Material.Name,
        house.Levels[crossing.LevelIndex].Name,
        crossing.DistanceMetres,
        crossing.IncidenceDegrees,
        crossing.Share,
        lossDb);
}
