using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>A place for a receiver on a lead.</summary>
/// <param name="Place">Where it is.</param>
/// <param name="On">The fixture it lies on; empty where it is stuck to a wall.</param>
internal readonly record struct ReceiverRest(Standing Place, string On);

/// <summary>
/// Where a receiver on a lead can stay: stuck to a wall, with its middle within <see cref="ImproveRequest.GreatestFromFaceMetres"/> of the face
/// and no door or window there, or lying on top of a fixture; both at heights that people reach. Never in mid-air.
/// </summary>
internal static class ReceiverRests
{
    /// <summary>Lowest height of a receiver, or of the top it lies on, metres: a skirting board or a low bench.</summary>
    public const double LowestMetres = 0.2;

    /// <summary>Greatest height of the same, metres: above a door, at arm's length.</summary>
    public const double HighestMetres = 2.1;

    // From the face to the middle of a receiver: half a small box, or a dongle on its lead (judgement).
    private const double OffMetres = 0.05;

    // Skirting, table, eye height, above a door.
    private static readonly double[] WallHeightsMetres = [LowestMetres, 0.9, 1.5, HighestMetres];

    private const double StepMetres = 0.25;

    // On a narrower top nothing stays.
    private const double NarrowestTopMetres = 0.05;

    /// <summary>All of them in a room, rounded to a centimetre, so that they are exactly what is printed.</summary>
    public static IEnumerable<ReceiverRest> In(House house, int levelIndex, Room room) =>
        OnWalls(house, levelIndex, room).Concat(OnTops(house, levelIndex, room))
            .Where(rest => room.Outline.Contains(rest.Place.Plan)
                && rest.Place.HeightMetres <= house.Levels[levelIndex].HeightMetres
                && !StandingRoom.IsOverVoid(house, levelIndex, rest.Place.Plan)
                && !house.Fixtures.Any(f => f.LevelIndex == levelIndex && f.Contains(rest.Place.Plan, rest.Place.HeightMetres))
                && !house.Levels[levelIndex].Walls.Any(wall => WallFaces.DistanceTo(wall, rest.Place.Plan) <= 0));

    private static IEnumerable<ReceiverRest> OnWalls(House house, int levelIndex, Room room)
    {
        IReadOnlyList<Point2> corners = room.Outline.Corners;
        Wall[] near = [.. house.Levels[levelIndex].Walls.Where(wall => IsNear(wall, room.Outline))];
        for (int i = 0; i < corners.Count; i++)
        {
            Point2 from = corners[i], edge = corners[(i + 1) % corners.Count] - from;
            double length = Math.Sqrt(Point2.Dot(edge, edge));
            Point2 along = (1 / length) * edge, inwards = new(-along.Y, along.X);
            inwards = room.Outline.Contains(from + (0.5 * edge) + (1e-3 * inwards)) ? inwards : -1 * inwards;
            foreach (double run in Steps(length))
            {
                Point2 at = from + (run * along);
                foreach (double height in WallHeightsMetres)
                {
                    // The thickest of the walls drawn there: its face is the visible one.
                    Wall? behind = near.Where(wall => IsAt(wall, at, height)).MaxBy(wall => wall.HalfThicknessMetres);
                    if (behind is not null)
                    {
                        Point2 place = at + ((behind.HalfThicknessMetres + OffMetres) * inwards);
                        yield return new ReceiverRest(Written(levelIndex, place, height, room), "");
                    }
                }
            }
        }
    }

    private static IEnumerable<ReceiverRest> OnTops(House house, int levelIndex, Room room) =>
        from fixture in house.Fixtures
        where fixture.LevelIndex == levelIndex
            && fixture.Seat is null
            && fixture.ToMetres >= LowestMetres && fixture.ToMetres <= HighestMetres
            && Math.Min(fixture.SizeX, fixture.SizeY) >= NarrowestTopMetres
        from x in Steps(fixture.SizeX)
        from y in Steps(fixture.SizeY)
        let turned = Math.SinCos(double.DegreesToRadians(fixture.TurnDegrees))
        let frame = new PlanFrame(turned.Cos, turned.Sin)
        let place = fixture.Centre + frame.ToPlan(x - (fixture.SizeX / 2), y - (fixture.SizeY / 2))
        select new ReceiverRest(Written(levelIndex, place, fixture.ToMetres + OffMetres, room), fixture.Name);

    private static bool IsNear(Wall wall, Polygon outline)
    {
        const double Slack = 0.05;
        return Math.Max(wall.Start.X, wall.End.X) >= outline.Least.X - Slack && Math.Min(wall.Start.X, wall.End.X) <= outline.Greatest.X + Slack
            && Math.Max(wall.Start.Y, wall.End.Y) >= outline.Least.Y - Slack && Math.Min(wall.Start.Y, wall.End.Y) <= outline.Greatest.Y + Slack;
    }

    private static bool IsAt(Wall wall, Point2 at, double height)
    {
        const double Slack = 0.01;
        Point2 along = (1 / wall.LengthMetres) * (wall.End - wall.Start), to = at - wall.Start;
        return Math.Abs(Point2.Cross(along, to)) <= Slack && WallFaces.IsSolidAt(wall, Point2.Dot(along, to), height, ImproveRequest.GreatestFromFaceMetres);
    }

    private static Standing Written(int levelIndex, Point2 place, double height, Room room) =>
        new(levelIndex, new Point2(Math.Round(place.X, 2), Math.Round(place.Y, 2)), Math.Round(height, 2), room.Name);

    // Centred, so that a narrow face has its places along its middle.
    private static IEnumerable<double> Steps(double length)
    {
        int count = Math.Max(1, (int)Math.Floor(length / StepMetres));
        double first = (length - ((count - 1) * StepMetres)) / 2;
        return Enumerable.Range(0, count).Select(i => first + (i * StepMetres));
    }
}
