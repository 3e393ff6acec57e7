using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>A stretch of a wall with the same cell along the whole of each side.</summary>
/// <param name="Wall">The wall.</param>
/// <param name="From">Where the stretch starts, metres from the wall's start.</param>
/// <param name="To">Where it ends.</param>
/// <param name="One">The cell to its left.</param>
/// <param name="Other">The cell to its right.</param>
internal sealed record WallRun(Wall Wall, double From, double To, int One, int Other)
{
    /// <summary>The walls of a level in such stretches: what lies beside a wall can change only where a room has a corner or a side.</summary>
    internal static IEnumerable<WallRun> Of(Level level, int index, Cells cells)
    {
        (Point2 From, Point2 To)[] sides = [.. level.Rooms.SelectMany(SidesOf)];
        var near = new PlanTree([.. sides.Select(side => PlanBox.Round(side.From, side.To))]);
        int[] candidates = new int[16];
        foreach (Wall wall in level.Walls.Where(wall => wall.LengthMetres > GeometryTolerances.SlackMetres))
        {
            double length = wall.LengthMetres;
            Point2 along = (1 / length) * (wall.End - wall.Start), left = new(-along.Y, along.X);
            int count = near.Query(wall.Start, wall.End, ref candidates, Cells.FarthestBesideMetres + GeometryTolerances.SlackMetres);
            IEnumerable<double> all = candidates.Take(count).SelectMany(i => Cuts(sides[i].From - wall.Start, sides[i].To - wall.Start, along, left));
            double[] cuts = [.. all.Where(u => u > 0 && u < length).Append(0).Append(length).Order()];
            for (int i = 0; i + 1 < cuts.Length; i++)
            {
                if (cuts[i + 1] - cuts[i] <= GeometryTolerances.SlackMetres)
                {
                    continue;
                }

                Point2 at = wall.Start + ((cuts[i] + cuts[i + 1]) / 2 * along);
                yield return new WallRun(
                    wall, cuts[i], cuts[i + 1], cells.RoomBeside(index, at, left), cells.RoomBeside(index, at, -1 * left));
            }
        }
    }

    private static IEnumerable<(Point2 From, Point2 To)> SidesOf(Room room) =>
        room.Outline.Corners.Select((corner, i) => (corner, room.Outline.Corners[(i + 1) % room.Outline.Corners.Count]));

    // Where along a wall a side of a room begins beside it, and where it crosses the wall's line.
    private static IEnumerable<double> Cuts(Point2 from, Point2 to, Point2 along, Point2 left)
    {
        double asideFrom = Point2.Dot(from, left), asideTo = Point2.Dot(to, left);
        if (Math.Abs(asideFrom) <= Cells.FarthestBesideMetres)
        {
            yield return Point2.Dot(from, along);
        }

        if (asideFrom * asideTo < 0)
        {
            yield return Point2.Dot(from + (asideFrom / (asideFrom - asideTo) * (to - from)), along);
        }
    }
}
