using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Building;

namespace LinkMargin.Plots.Paths;

/// <summary>
/// The vertical plane through a spot and a seat, and where it cuts a house. A position on it is the distance from the spot
/// towards the seat and the height above the lowest floor, both in metres.
/// </summary>
internal sealed class SectionCut
{
    // If spot and seat are above each other there is no direction, so the cut runs east.
    private const double LeastMetres = 0.01;

    // Below this sine the cut runs so nearly along a wall that it would cut it over metres.
    private const double LeastSine = 0.1;

    private readonly Point2 from;

    /// <summary>The cut from a place on the plan towards another.</summary>
    public SectionCut(Point2 from, Point2 towards)
    {
        this.from = from;
        double metres = from.DistanceTo(towards);
        Along = metres < LeastMetres ? new(1, 0) : (1 / metres) * (towards - from);
    }

    /// <summary>Unit vector along the cut on the plan.</summary>
    public Point2 Along { get; }

    /// <summary>Distance of a place on the plan along the cut.</summary>
    public double At(Point2 plan) => Point2.Dot(plan - from, Along);

    /// <summary>A place in the house projected onto the cut.</summary>
    public Point2 Seen(Point3 place) => new(At(place.Plan), place.Z);

    /// <summary>The intervals of the cut inside an outline, in order.</summary>
    public IReadOnlyList<(double From, double To)> Inside(Polygon outline)
    {
        IReadOnlyList<Point2> corners = outline.Corners;
        double[] crossings =
        [
            .. corners.Select((corner, i) => Crossing(corner, corners[(i + 1) % corners.Count])).OfType<double>().Order(),
        ];
        return [.. Enumerable.Range(0, crossings.Length / 2).Select(i => (crossings[2 * i], crossings[(2 * i) + 1]))];
    }

    /// <summary>The intervals inside any of several outlines, in order; touching ones are merged.</summary>
    public IReadOnlyList<(double From, double To)> InsideAny(IEnumerable<Polygon> outlines)
    {
        var joined = new List<(double From, double To)>();
        foreach ((double start, double end) in outlines.SelectMany(Inside).Order())
        {
            if (joined.Count > 0 && start <= joined[^1].To + LeastMetres)
            {
                joined[^1] = (joined[^1].From, Math.Max(joined[^1].To, end));
            }
            else
            {
                joined.Add((start, end));
            }
        }

        return joined;
    }

    /// <summary>Where the cut crosses a straight line between two places on the plan; null if it does not.</summary>
    public double? Crossing(Point2 a, Point2 b)
    {
        double sideA = Point2.Cross(Along, a - from), sideB = Point2.Cross(Along, b - from);
        return sideA > 0 == sideB > 0 ? null : At(a) + ((At(b) - At(a)) * sideA / (sideA - sideB));
    }

    /// <summary>The walls of a level that the cut crosses.</summary>
    public IEnumerable<WallInCut> Walls(Level level)
    {
        foreach (Wall wall in level.Walls)
        {
            double sine = Math.Abs(Point2.Cross(WallShape.DirectionsOf(wall).Along, Along));
            if (Crossing(wall.Start, wall.End) is not double middle)
            {
                continue;
            }

            double half = Math.Min(WallShape.ThicknessOf(wall.Material) / 2 / Math.Max(sine, LeastSine), wall.LengthMetres / 2);
            double onWall = (from + (middle * Along)).DistanceTo(wall.Start);
            Opening? opening = wall.Openings.FirstOrDefault(o => onWall >= o.OffsetMetres && onWall <= o.OffsetMetres + o.WidthMetres);
            yield return new(wall, middle - half, middle + half, opening);
        }
    }

    /// <summary>The joists of a floor that the cut crosses: middle and half width of each; none if it runs along them.</summary>
    /// <param name="joists">Their layout.</param>
    /// <param name="widthMetres">Width of one joist.</param>
    /// <param name="least">Start of the interval along the cut.</param>
    /// <param name="greatest">End of the interval.</param>
    public IEnumerable<(double Middle, double Half)> Joists(JoistLayout joists, double widthMetres, double least, double greatest)
    {
        (double sine, double cosine) = Math.SinCos(joists.RunDegrees * Math.PI / 180);
        Point2 left = new(-sine, cosine);
        double rate = Point2.Dot(left, Along), half = widthMetres / 2 / Math.Abs(rate);
        if (Math.Abs(rate) < LeastSine)
        {
            yield break;
        }

        double first = joists.FirstOffsetMetres ?? 0, start = Point2.Dot(left, from);
        double a = (start + (rate * least) - first) / joists.SpacingMetres, b = (start + (rate * greatest) - first) / joists.SpacingMetres;
        for (double n = Math.Ceiling(Math.Min(a, b)); n <= Math.Max(a, b); n++)
        {
            yield return ((first + (n * joists.SpacingMetres) - start) / rate, half);
        }
    }
}

/// <summary>A wall where it crosses the cut.</summary>
/// <param name="Wall">The wall.</param>
/// <param name="From">Its nearer face along the cut, metres.</param>
/// <param name="To">Its farther face.</param>
/// <param name="Opening">The opening that the cut passes through; null if it passes through the wall itself.</param>
internal sealed record WallInCut(Wall Wall, double From, double To, Opening? Opening)
{
    /// <summary>Solid parts from bottom to top, metres above the level's floor.</summary>
    public IEnumerable<(double From, double To)> Solid()
    {
        double bottom = Wall.BaseMetres, top = Wall.TopMetres;
        if (Opening is null)
        {
            return [(bottom, top)];
        }

        double sill = Opening.SillMetres, head = sill + Opening.HeightMetres;
        return new[] { (From: bottom, To: Math.Min(sill, top)), (From: Math.Max(head, bottom), To: top) }.Where(part => part.To - part.From > 1e-6);
    }
}
