using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>Doors left open, and controllers of another class.</summary>
internal static class HouseRemedies
{
    // Enough to stand in the room beyond a door.
    private const double StepMetres = 0.3;

    /// <summary>Each shut door between two rooms, open.</summary>
    public static IEnumerable<Remedy> Doors(House house)
    {
        for (int i = 0; i < house.Levels.Count; i++)
        {
            Level level = house.Levels[i];
            foreach (string name in level.Walls
                .SelectMany(wall => wall.Openings.Where(o => o.Kind == OpeningKind.Door && !o.IsOpen && IsInside(level, wall, o)))
                .Select(door => door.Name)
                .Distinct())
            {
                yield return new Remedy(RemedyKind.OpenDoor, Effort.Free, [new SetOpening(name, i, true)]) { Thing = name, LevelIndex = i };
            }
        }
    }

    /// <summary>Each other class of controller.</summary>
    public static IEnumerable<Remedy> Controllers(House house, IEnumerable<Radio> controllers) =>
        from radio in controllers
        where radio.Name != house.Controller.Name
        select new Remedy(RemedyKind.Controller, Effort.Buy, [new SetController(radio)]) { Thing = radio.Name };

    private static bool IsInside(Level level, Wall wall, Opening door)
    {
        Point2 along = (1 / wall.LengthMetres) * (wall.End - wall.Start);
        Point2 middle = wall.Start + ((door.OffsetMetres + (door.WidthMetres / 2)) * along);
        Point2 across = StepMetres * new Point2(-along.Y, along.X);
        return level.Rooms.Any(room => room.Outline.Contains(middle + across)) && level.Rooms.Any(room => room.Outline.Contains(middle - across));
    }
}
