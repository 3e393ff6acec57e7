using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Plans.Drafts;

namespace LinkMargin.Files.Tests.Plans;

/// <summary>
/// A floor cut by random lines into a grid of cells, of which neighbours are put together at random into rectangles:
/// rooms that fill the floor, meet at T junctions, and know how they were made.
/// </summary>
internal sealed record RandomRooms(double[] X, double[] Y, int[][] Cells)
{
    /// <summary>Up to five by five cells, lines 0.8 m to 3 m apart, to the centimetre.</summary>
    internal static Gen<RandomRooms> Any { get; } =
        from columns in Gen.Int[1, 5]
        from rows in Gen.Int[1, 5]
        from widths in Gen.Int[80, 300].Array[columns]
        from depths in Gen.Int[80, 300].Array[rows]
        from tries in Gen.Int[0, 999].Array[columns * rows]
        select new RandomRooms(Lines(widths), Lines(depths), Fill(columns, rows, tries));

    /// <summary>The rooms as rectangles: west, south, east, north.</summary>
    internal IReadOnlyList<(double West, double South, double East, double North)> Rectangles =>
        [.. Cells.Select(c => (X[c[0]], Y[c[1]], X[c[2]], Y[c[3]]))];

    /// <summary>The outline of each room after a movement of the plan.</summary>
    internal IReadOnlyList<RoomDraft> Drafts(Func<Point2, Point2> move) =>
        [.. Rectangles.Select((r, i) => new RoomDraft(
            FormattableString.Invariant($"r{i}"),
            [
                move(new(r.West, r.South)), move(new(r.East, r.South)), move(new(r.East, r.North)), move(new(r.West, r.North)),
            ],
            default))];

    /// <summary>
    /// Length of all walls: each room's outline, a side inside the floor counted half, since it belongs to two rooms.
    /// </summary>
    internal double WallMetres =>
        ((X[^1] + Y[^1]) * 2 / 2) + (Rectangles.Sum(r => 2 * (r.East - r.West + r.North - r.South)) / 2);

    private static double[] Lines(int[] centimetres)
    {
        double[] lines = new double[centimetres.Length + 1];
        int sum = 0;
        for (int i = 0; i < centimetres.Length; i++)
        {
            sum += centimetres[i];
            lines[i + 1] = sum / 100.0;
        }

        return lines;
    }

    /// <summary>Goes over the cells and lets each free one grow to a random free rectangle.</summary>
    private static int[][] Fill(int columns, int rows, int[] tries)
    {
        bool[,] taken = new bool[columns, rows];
        List<int[]> rooms = [];
        for (int x = 0; x < columns; x++)
        {
            for (int y = 0; y < rows; y++)
            {
                if (taken[x, y])
                {
                    continue;
                }

                int wish = tries[(x * rows) + y];
                int toX = Math.Min(columns, x + 1 + (wish % 3)), toY = Math.Min(rows, y + 1 + (wish / 3 % 3));
                while (toY > y + 1 && IsTaken(taken, x, y, toX, toY))
                {
                    toY--;
                }

                while (toX > x + 1 && IsTaken(taken, x, y, toX, toY))
                {
                    toX--;
                }

                rooms.Add([x, y, toX, toY]);
                for (int i = x; i < toX; i++)
                {
                    for (int j = y; j < toY; j++)
                    {
                        taken[i, j] = true;
                    }
                }
            }
        }

        return [.. rooms];
    }

    private static bool IsTaken(bool[,] taken, int fromX, int fromY, int toX, int toY)
    {
        for (int i = fromX; i < toX; i++)
        {
            for (int j = fromY; j < toY; j++)
            {
                if (taken[i, j])
                {
                    return true;
                }
            }
        }

        return false;
    }
}
