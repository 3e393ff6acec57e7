using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Changes;

namespace LinkMargin.Web.Drawing;

/// <summary>Finds where on the plans a change is.</summary>
internal static class ChangePlace
{
    /// <summary>Its place; null for a change without one, such as another radio.</summary>
    public static (int Level, Point2 Plan)? Of(House house, HouseChange change) => change.Kind switch
    {
        ChangeKinds.MoveSpot or ChangeKinds.MoveSeat when change is { Level: { } level, X: { } x, Y: { } y } => (level, new Point2(x, y)),
        ChangeKinds.SetOpening when change.Level is { } level => On(level, Opening(house.Levels[level], change.Name)),
        ChangeKinds.WallMaterial when change.Level is { } level => On(level, Wall(house.Levels[level], change.Name)),
        ChangeKinds.RemoveFixture or ChangeKinds.OpenSide or ChangeKinds.SwapSide => Fixture(house, change.Name),
        ChangeKinds.TurnSeat or ChangeKinds.RemoveSeat => Seat(house, change.Name),
        _ => null,
    };

    private static (int Level, Point2 Plan)? On(int level, Point2? plan) => plan is { } place ? (level, place) : null;

    private static Point2? Opening(Level level, string? name)
    {
        foreach (Wall wall in level.Walls)
        {
            if (wall.Openings.FirstOrDefault(one => one.Name == name) is { } opening)
            {
                double along = opening.OffsetMetres + (opening.WidthMetres / 2);
                return wall.Start + (along / wall.Start.DistanceTo(wall.End) * (wall.End - wall.Start));
            }
        }

        return null;
    }

    private static Point2? Wall(Level level, string? name) =>
        level.Walls.FirstOrDefault(one => one.Name == name) is { } wall ? 0.5 * (wall.Start + wall.End) : null;

    private static (int Level, Point2 Plan)? Fixture(House house, string? name) =>
        house.Fixtures.FirstOrDefault(one => one.Name == name) is { } fixture ? (fixture.LevelIndex, fixture.Centre) : null;

    private static (int Level, Point2 Plan)? Seat(House house, string? name) =>
        house.Seats.FirstOrDefault(one => one.Name == name) is { } seat ? (seat.LevelIndex, seat.Plan) : null;
}
