using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

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
        foreach (Wall wall in level.Walls.Where(wall => wall.LengthMetres > GeometryTolerances.SlackMetres))
        {
            double length = wall.LengthMetres;
            Point2 along = (1 / length) * (wall.End - wall.Start), left = new(-along.Y, along.X);
            double[] cuts = [.. Cuts(level, wall, along, left).Where(u => u > 0 && u < length).Append(0).Append(length).Order()];
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

    private static IEnumerable<double> Cuts(Level level, Wall wall, Point2 along, Point2 left)
    {
        foreach (Room room in level.Rooms)
        {
            IReadOnlyList<Point2> corners = room.Outline.Corners;
            for (int i = 0; i < corners.Count; i++)
            {
                Point2 a = corners[i] - wall.Start, b = corners[(i + 1) % corners.Count] - wall.Start;
                double asideA = Point2.Dot(a, left), asideB = Point2.Dot(b, left);
                if (Math.Abs(asideA) <= Cells.FarthestBesideMetres)
                {
                    yield return Point2.Dot(a, along);
                }

                if (asideA * asideB < 0)
                {
                    yield return Point2.Dot(a + (asideA / (asideA - asideB) * (b - a)), along);
                }
            }
        }
    }
}
