using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Plots.Contours;

/// <summary>
/// Strokes over the ground where a surface is below a value. Each stroke follows the surface in steps of a third of a cell and is
/// cut where the surface crosses the value, so that the hatching ends on its contour line.
/// </summary>
internal static class Hatch
{
    private const double StepsPerCell = 3;

    /// <summary>Strokes at 45 degrees, rising to the right.</summary>
    /// <param name="surface">The surface.</param>
    /// <param name="value">Ground below this is hatched.</param>
    /// <param name="spacingMetres">Distance between strokes, metres, above 0.</param>
    public static IEnumerable<HatchLine> Below(FieldSurface surface, double value, double spacingMetres)
    {
        Grid grid = surface.Grid;
        double left = grid.Origin.X, bottom = grid.Origin.Y;
        double right = left + (grid.Columns * grid.CellMetres), top = bottom + (grid.Rows * grid.CellMetres);
        double shift = spacingMetres * Math.Sqrt(2);

        // Strokes are y = x + c with c a multiple of the shift, so the hatching of neighbouring pictures matches.
        for (double n = Math.Ceiling((bottom - right) / shift); n * shift <= top - left; n++)
        {
            double c = n * shift;
            double from = Math.Max(left, bottom - c), to = Math.Min(right, top - c);
            if (to > from)
            {
                foreach (HatchLine line in Along(surface, value, c, from, to))
                {
                    yield return line;
                }
            }
        }
    }

    private static IEnumerable<HatchLine> Along(FieldSurface surface, double value, double c, double from, double to)
    {
        int steps = Math.Max(1, (int)Math.Ceiling((to - from) * StepsPerCell / surface.Grid.CellMetres));
        double? begun = null;
        double lastX = from, last = surface.At(from, from + c) - value;
        if (last < 0)
        {
            begun = from;
        }

        for (int i = 1; i <= steps; i++)
        {
            double x = from + ((to - from) * i / steps);
            double here = surface.At(x, x + c) - value;
            if (begun is null && here < 0)
            {
                begun = double.IsNaN(last) ? x : Root(lastX, last, x, here);
            }
            else if (begun is double start && !(here < 0))
            {
                yield return Line(start, double.IsNaN(here) ? lastX : Root(lastX, last, x, here), c);
                begun = null;
            }

            (lastX, last) = (x, here);
        }

        if (begun is double open)
        {
            yield return Line(open, to, c);
        }
    }

    private static double Root(double x0, double f0, double x1, double f1) => x0 + ((x1 - x0) * f0 / (f0 - f1));

    private static HatchLine Line(double fromX, double toX, double c) => new(new(fromX, fromX + c), new(toX, toX + c));
}

/// <summary>One stroke of a hatch.</summary>
/// <param name="From">One end, metres.</param>
/// <param name="To">The other end.</param>
internal readonly record struct HatchLine(Point2 From, Point2 To);
