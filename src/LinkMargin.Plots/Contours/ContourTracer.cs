using LinkMargin.Engine.Geometry;

namespace LinkMargin.Plots.Contours;

/// <summary>
/// Contour lines by marching squares: each square of four nodes gives at most two straight pieces, which are
/// then joined end to end. The mean of its four nodes decides a saddle. Squares with a missing node give nothing,
/// so a line ends where the surface ends.
/// </summary>
internal static class ContourTracer
{
    public static IReadOnlyList<ContourLine> Trace(FieldSurface surface, double level)
    {
        var links = new SortedDictionary<int, (int First, int Second)>();
        for (int row = 0; row + 1 < surface.Rows; row++)
        {
            for (int column = 0; column + 1 < surface.Columns; column++)
            {
                AddSquare(surface, level, column, row, links);
            }
        }

        return Join(surface, level, links);
    }

    // An edge is numbered by its lower left node: twice the node's number, plus one for the vertical edge.
    private static void AddSquare(FieldSurface s, double level, int column, int row, SortedDictionary<int, (int, int)> links)
    {
        double sw = s.AtNode(column, row), se = s.AtNode(column + 1, row);
        double nw = s.AtNode(column, row + 1), ne = s.AtNode(column + 1, row + 1);
        double mean = (sw + se + nw + ne) / 4;
        if (double.IsNaN(mean))
        {
            return;
        }

        int node = (row * s.Columns) + column;
        int south = 2 * node, west = south + 1, north = 2 * (node + s.Columns), east = (2 * (node + 1)) + 1;
        int corners = (sw >= level ? 1 : 0) | (se >= level ? 2 : 0) | (ne >= level ? 4 : 0) | (nw >= level ? 8 : 0);
        bool isMeanAbove = mean >= level;
        switch (corners)
        {
            case 1 or 14:
                Link(links, west, south);
                break;
            case 2 or 13:
                Link(links, south, east);
                break;
            case 4 or 11:
                Link(links, east, north);
                break;
            case 8 or 7:
                Link(links, north, west);
                break;
            case 3 or 12:
                Link(links, west, east);
                break;
            case 6 or 9:
                Link(links, south, north);
                break;
            case 5 or 10:
                // The two corners above the level are connected if the middle is above it too.
                bool cutsSouthEast = (corners == 5) == isMeanAbove;
                Link(links, south, cutsSouthEast ? east : west);
                Link(links, north, cutsSouthEast ? west : east);
                break;
        }
    }

    private static void Link(SortedDictionary<int, (int First, int Second)> links, int a, int b)
    {
        links[a] = links.TryGetValue(a, out (int First, int Second) ofA) ? (ofA.First, b) : (b, -1);
        links[b] = links.TryGetValue(b, out (int First, int Second) ofB) ? (ofB.First, a) : (a, -1);
    }

    private static List<ContourLine> Join(
        FieldSurface surface, double level, SortedDictionary<int, (int First, int Second)> links)
    {
        var lines = new List<ContourLine>();
        var done = new HashSet<int>();
        IEnumerable<int> loose = links.Where(l => l.Value.Second < 0).Select(l => l.Key);
        foreach (int start in loose.Concat(links.Keys))
        {
            if (!done.Add(start))
            {
                continue;
            }

            var points = new List<Point2> { Crossing(surface, level, start) };
            bool isClosed = links[start].Second >= 0;
            int previous = start, edge = links[start].First;
            while (edge >= 0 && edge != start)
            {
                done.Add(edge);
                points.Add(Crossing(surface, level, edge));
                (int first, int second) = links[edge];
                (previous, edge) = (edge, first == previous ? second : first);
            }

            if (isClosed)
            {
                points.Add(points[0]);
            }

            lines.Add(new ContourLine(points, isClosed));
        }

        return lines;
    }

    private static Point2 Crossing(FieldSurface s, double level, int edge)
    {
        int node = edge / 2, column = node % s.Columns, row = node / s.Columns;
        bool isUpright = edge % 2 == 1;
        double from = s.AtNode(column, row);
        double to = isUpright ? s.AtNode(column, row + 1) : s.AtNode(column + 1, row);
        double t = (level - from) / (to - from);
        return isUpright ? s.NodePosition(column, row + t) : s.NodePosition(column + t, row);
    }
}

/// <summary>One continuous contour line.</summary>
/// <param name="Points">Its corners in order, metres; a closed line repeats its first at the end.</param>
/// <param name="IsClosed">Whether it ends where it starts.</param>
internal sealed record ContourLine(IReadOnlyList<Point2> Points, bool IsClosed);
