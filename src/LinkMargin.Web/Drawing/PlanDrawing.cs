using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Building;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Drawing;

/// <summary>Draws a level for the page with the same shapes as in the pictures.</summary>
internal static class PlanDrawing
{
    // Thinner walls would vanish on a small plan.
    private const double LeastWallMetres = 0.05;
    private const double AboutMetres = 0.35;

    /// <summary>Draws a level.</summary>
    /// <param name="house">The house.</param>
    /// <param name="index">The level.</param>
    /// <param name="handsMetres">Height of the map above the floor, metres.</param>
    public static LevelDrawing Of(House house, int index, double handsMetres)
    {
        Level level = house.Levels[index];
        return new LevelDrawing(level.Name, level.HeightMetres, BoundsOf(house))
        {
            Rooms = [.. level.Rooms.Select(Room)],
            Floor = ShapeText.All(level.Rooms.Select(room => room.Outline.Corners)),
            Walls = [.. WallShape.Of(level, LeastWallMetres).Select(shape => new WallItem(shape.Wall.Name, shape.Wall.Material.Name, shape.IsFull, ShapeText.Closed(shape.Corners)))],
            Openings = [.. level.Walls.SelectMany(wall => wall.Openings.Select(opening => Opening(level, wall, opening)))],
            Joists = Joists(level),
            Voids = string.Concat(FloorVoids.Of(house, index).DistinctBy(v => (v.Least, v.Greatest, v.Corners.Count)).Select(Void)),
            Fixtures = [.. house.Fixtures.Where(fixture => fixture.LevelIndex == index && fixture.Seat is null).Select(fixture => Fixture(fixture, handsMetres))],
        };
    }

    /// <summary>Common bounds of all levels, so that they have one scale and line up: west, south, east and north, metres.</summary>
    private static double[] BoundsOf(House house)
    {
        Point2[] all =
        [
            .. house.Levels.SelectMany(level => level.Rooms.SelectMany(room => room.Outline.Corners)),
            .. house.Levels.SelectMany(level => level.Walls.SelectMany(wall => new[] { wall.Start, wall.End })),
        ];
        return all.Length == 0
            ? [0, 0, 1, 1]
            : [all.Min(p => p.X) - AboutMetres, all.Min(p => p.Y) - AboutMetres, all.Max(p => p.X) + AboutMetres, all.Max(p => p.Y) + AboutMetres];
    }

    private static RoomItem Room(Room room)
    {
        Point2 place = MiddleOf(room.Outline);
        return new RoomItem(room.Name, place.X, place.Y, room.Outline.Greatest.X - room.Outline.Least.X, room.Outline.Greatest.Y - room.Outline.Least.Y);
    }

    // A place well inside any room, even an L-shaped one: the point of a grid that is farthest from the outline.
    private static Point2 MiddleOf(Polygon outline)
    {
        const int Across = 12;
        const double Preference = 0.05; // favours the middle, since a long rectangle has many points as deep
        Point2 least = outline.Least, greatest = outline.Greatest, best = 0.5 * (least + greatest);
        double depth = outline.DepthOf(best) + Preference;
        for (int i = 1; i < Across; i++)
        {
            for (int j = 1; j < Across; j++)
            {
                Point2 at = new(least.X + ((greatest.X - least.X) * i / Across), least.Y + ((greatest.Y - least.Y) * j / Across));
                if (outline.DepthOf(at) > depth)
                {
                    (best, depth) = (at, outline.DepthOf(at));
                }
            }
        }

        return best;
    }

    private static OpeningItem Opening(Level level, Wall wall, Opening opening)
    {
        double from = opening.OffsetMetres, to = from + opening.WidthMetres;
        double half = Math.Max(WallShape.ThicknessOf(wall.Material), LeastWallMetres) / 2;
        IReadOnlyList<Point2> hole = WallShape.Along(wall, from, to, -half, half);
        Point2 middle = 0.25 * (hole[0] + hole[1] + hole[2] + hole[3]);
        (string leaf, string swing) = opening.Kind switch
        {
            OpeningKind.Door => Door(DoorSwing.Of(level, wall, opening), opening),
            OpeningKind.Window => (Pane(wall, from, to, -half / 4) + Pane(wall, from, to, half / 4), ""),
            _ => ("", ""),
        };
        return new OpeningItem(
            opening.Name, KindOf(opening.Kind), opening.IsOpen, opening.Leaf?.Name ?? "", ShapeText.Closed(hole), leaf, swing, middle.X, middle.Y);
    }

    private static string KindOf(OpeningKind kind) => kind switch
    {
        OpeningKind.Door => "door",
        OpeningKind.Window => "window",
        _ => "gap",
    };

    private static (string Leaf, string Swing) Door(DoorSwing swing, Opening door)
    {
        string width = ShapeText.Number(door.WidthMetres);
        return door.IsOpen
            ? (ShapeText.Line(swing.Hinge, swing.Tip),
                $"{ShapeText.Line(swing.Latch)}A{width} {width} 0 0 {(swing.TurnsLeft ? 1 : 0)} {ShapeText.Number(swing.Tip.X)} {ShapeText.Number(swing.Tip.Y)}")
            : (ShapeText.Line(swing.Hinge, swing.Latch), "");
    }

    private static string Pane(Wall wall, double from, double to, double aside)
    {
        IReadOnlyList<Point2> glass = WallShape.Along(wall, from, to, aside, aside);
        return ShapeText.Line(glass[0], glass[1]);
    }

    private static string Void(Polygon hole) =>
        ShapeText.Closed(hole.Corners)
        + ShapeText.Line(hole.Least, hole.Greatest)
        + ShapeText.Line(new(hole.Least.X, hole.Greatest.Y), new(hole.Greatest.X, hole.Least.Y));

    private static string Joists(Level level) => level.Above is { Joists: { } joists }
        ? string.Concat(JoistLayer.Lines(level, joists).Select(line => ShapeText.Line(line.From, line.To)))
        : "";

    private static FixtureItem Fixture(Fixture fixture, double handsMetres) => new(
        fixture.Name,
        fixture.Material.Name,
        fixture.IsShell,
        !fixture.IsShell && fixture.FromMetres <= handsMetres && handsMetres <= fixture.ToMetres,
        ShapeText.Closed(fixture.Corners()),
        string.Concat(FixtureLayer.SidesOf(fixture).Where(side => side.IsThere).Select(side => ShapeText.Line(side.From, side.To))));
}
