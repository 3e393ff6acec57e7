using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Diffuse;

/// <summary>The part of a room's floor or ceiling behind which one cell lies.</summary>
/// <param name="Other">That cell.</param>
/// <param name="IsVoid">Whether it is a hole.</param>
/// <param name="SquareMetres">Its area.</param>
/// <param name="Outline">The rectangle it is seen as: of its area, round its middle.</param>
internal sealed record PlatePart(int Other, bool IsVoid, double SquareMetres, Polygon Outline)
{
    private const int Across = 48; // squares along the longer side of a room

    /// <summary>Measures a room's plate square by square.</summary>
    /// <param name="cells">The cells.</param>
    /// <param name="outline">The room.</param>
    /// <param name="otherLevel">The level behind; −1 for none.</param>
    /// <param name="voids">Holes in it.</param>
    internal static IEnumerable<PlatePart> Of(Cells cells, Polygon outline, int otherLevel, IReadOnlyList<Polygon> voids)
    {
        Point2 least = outline.Least, greatest = outline.Greatest;
        double step = Math.Max(greatest.X - least.X, greatest.Y - least.Y) / Across;
        int columns = (int)Math.Ceiling((greatest.X - least.X) / step), rows = (int)Math.Ceiling((greatest.Y - least.Y) / step);
        double width = (greatest.X - least.X) / columns, depth = (greatest.Y - least.Y) / rows;
        var parts = new SortedDictionary<(int Other, bool IsVoid), List<Point2>>();
        int count = 0;
        for (int i = 0; i < columns; i++)
        {
            for (int j = 0; j < rows; j++)
            {
                Point2 at = new(least.X + ((i + 0.5) * width), least.Y + ((j + 0.5) * depth));
                if (!outline.Contains(at))
                {
                    continue;
                }

                count++;
                int other = otherLevel < 0 ? Cells.Outdoors : cells.RoomAt(otherLevel, at);
                (int, bool) key = (other, voids.Any(hole => hole.Contains(at)));
                if (!parts.TryGetValue(key, out List<Point2>? squares))
                {
                    parts.Add(key, squares = []);
                }

                squares.Add(at);
            }
        }

        // Squares are shared out over the room's exact area.
        double square = count > 0 ? outline.AreaSquareMetres / count : 0;
        return parts.Select(part => new PlatePart(
            part.Key.Other, part.Key.IsVoid, part.Value.Count * square, RectangleFor(part.Value, part.Value.Count * square)));
    }

    private static Polygon RectangleFor(List<Point2> squares, double squareMetres)
    {
        double left = squares.Min(p => p.X), right = squares.Max(p => p.X);
        double bottom = squares.Min(p => p.Y), top = squares.Max(p => p.Y);
        Point2 middle = new(squares.Average(p => p.X), squares.Average(p => p.Y));
        double ratio = Math.Max(right - left, 0.05) / Math.Max(top - bottom, 0.05);
        double width = Math.Sqrt(squareMetres * ratio), depth = squareMetres / width;
        return new Polygon(
        [
            new(middle.X - (width / 2), middle.Y - (depth / 2)),
            new(middle.X + (width / 2), middle.Y - (depth / 2)),
            new(middle.X + (width / 2), middle.Y + (depth / 2)),
            new(middle.X - (width / 2), middle.Y + (depth / 2)),
        ]);
    }
}
