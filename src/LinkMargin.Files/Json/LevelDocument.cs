using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Json;

/// <summary>One level as it was read, as JSON.</summary>
/// <param name="Name">Its name.</param>
/// <param name="ElevationM">Its floor above the lowest level's, metres.</param>
/// <param name="HeightM">Floor to ceiling, metres.</param>
/// <param name="Rooms">Its rooms, written or found.</param>
/// <param name="Walls">How many walls it has, each straight stretch counted.</param>
/// <param name="Openings">How many openings they have.</param>
public sealed record LevelDocument(
    string Name, double ElevationM, double HeightM, IReadOnlyList<RoomDocument> Rooms, int Walls, int Openings)
{
    internal static LevelDocument From(Level level) => new(
        level.Name,
        level.ElevationMetres,
        level.HeightMetres,
        [.. level.Rooms.Select(room => new RoomDocument(room.Name, room.Outline.AreaSquareMetres))],
        level.Walls.Count,
        level.Walls.Sum(wall => wall.Openings.Count));
}
