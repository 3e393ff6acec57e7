using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;

namespace LinkMargin.Files.Json;

/// <summary>One obstacle on a path, as JSON.</summary>
/// <param name="What"><c>wall</c>, <c>opening</c>, <c>floor</c>, <c>joists</c>, <c>fixture</c> or <c>player</c>.</param>
/// <param name="Name">Which one.</param>
/// <param name="Material">What it is made of there.</param>
/// <param name="Level">The level it belongs to; a floor belongs to the level below it.</param>
/// <param name="AtM">From the spot along the path, metres.</param>
/// <param name="IncidenceDeg">Angle to the surface's normal, degrees.</param>
/// <param name="Share">How much of the table loss's geometry applies.</param>
/// <param name="LossDb">What it takes away, dB.</param>
/// <param name="Basis">
/// What the loss rests on: <c>listed</c> (the table's loss at every angle), <c>head-on</c> or <c>mean</c> (the table's loss head
/// on or as a mean over angles, its layers give the change with the angle), <c>through</c> (the loss of the thing itself,
/// where the table's counts the way round in), <c>joists</c> (the share of the path's width that they cover).
/// </param>
public sealed record CrossingDocument(
    string What,
    string Name,
    string Material,
    string Level,
    double AtM,
    double IncidenceDeg,
    double Share,
    double LossDb,
    string Basis)
{
    /// <summary>The word for a kind of obstacle.</summary>
    public static string WordFor(ObstacleKind kind) => kind switch
    {
        ObstacleKind.Wall => "wall",
        ObstacleKind.Opening => "opening",
        ObstacleKind.FloorLayer => "floor",
        ObstacleKind.Joists => "joists",
        ObstacleKind.Fixture => "fixture",
        ObstacleKind.Player => "player",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "This is not a kind of obstacle."),
    };

    /// <summary>The word for what a loss rests on.</summary>
    public static string WordFor(LossBasis basis) => basis switch
    {
        LossBasis.Listed => "listed",
        LossBasis.HeadOnAndLayers => "head-on",
        LossBasis.MeanAndLayers => "mean",
        LossBasis.Through => "through",
        LossBasis.JoistShare => "joists",
        _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, "This is not what a loss can rest on."),
    };

    internal static CrossingDocument Of(House house, Crossing crossing, double lossDb, LossBasis basis) => new(
        WordFor(crossing.Kind),
        crossing.Name,
        crossing.Material.Name,
        house.Levels[crossing.LevelIndex].Name,
        crossing.DistanceMetres,
        crossing.IncidenceDegrees,
        crossing.Share,
        lossDb,
        WordFor(basis));
}
