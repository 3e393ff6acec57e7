using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Runs;

/// <summary>Finds what lies near a place of the plan without examining everything: boxes sorted into the squares of the plan they cover.</summary>
internal sealed class PlanGrid
{
    // Squares from side to side. A house of 400 rooms has a few boxes in each.
    private const int Squares = 64;

    private readonly List<int>?[,] squares = new List<int>?[Squares, Squares];
    private readonly Point2 least;
    private readonly Point2 side;

    /// <summary>Sorts boxes, each by its smallest and largest coordinates.</summary>
    internal PlanGrid(IReadOnlyList<(Point2 Least, Point2 Greatest)> boxes)
    {
        if (boxes.Count == 0)
        {
            return;
        }

        least = new(boxes.Min(box => box.Least.X), boxes.Min(box => box.Least.Y));
        side = (1.0 / Squares) * (new Point2(boxes.Max(box => box.Greatest.X), boxes.Max(box => box.Greatest.Y)) - least);
        for (int i = 0; i < boxes.Count; i++)
        {
            foreach ((int x, int y) in Touched(boxes[i].Least, boxes[i].Greatest))
            {
                (squares[x, y] ??= []).Add(i);
            }
        }
    }

    /// <summary>The box around a straight line.</summary>
    internal static (Point2 Least, Point2 Greatest) BoxOf(Point2 a, Point2 b) =>
        (new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y)), new(Math.Max(a.X, b.X), Math.Max(a.Y, b.Y)));

    /// <summary>The boxes that may touch a rectangle, in their own order; some of them do not.</summary>
    internal IEnumerable<int> Near(Point2 from, Point2 to) =>
        Touched(from, to).SelectMany(square => squares[square.X, square.Y] ?? []).Distinct().Order();

    private IEnumerable<(int X, int Y)> Touched(Point2 from, Point2 to)
    {
        for (int x = Index(from.X - least.X, side.X); x <= Index(to.X - least.X, side.X); x++)
        {
            for (int y = Index(from.Y - least.Y, side.Y); y <= Index(to.Y - least.Y, side.Y); y++)
            {
                yield return (x, y);
            }
        }
    }

    private static int Index(double metres, double side) => side > 0 ? (int)Math.Clamp(Math.Floor(metres / side), 0, Squares - 1) : 0;
}
