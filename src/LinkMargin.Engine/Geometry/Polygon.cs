namespace LinkMargin.Engine.Geometry;

/// <summary>A simple closed polygon on a level's plan. The last corner joins the first.</summary>
public sealed class Polygon
{
    private readonly Point2[] corners;

    /// <summary>Makes a polygon of at least three corners.</summary>
    public Polygon(IEnumerable<Point2> corners)
    {
        this.corners = [.. corners];
        if (this.corners.Length < 3)
        {
            throw new ArgumentException($"A polygon needs at least 3 corners, not {this.corners.Length}.", nameof(corners));
        }

        Least = new(this.corners.Min(c => c.X), this.corners.Min(c => c.Y));
        Greatest = new(this.corners.Max(c => c.X), this.corners.Max(c => c.Y));
    }

    /// <summary>The corners in order.</summary>
    public IReadOnlyList<Point2> Corners => corners;

    /// <summary>The corners in order, as a span.</summary>
    internal ReadOnlySpan<Point2> AllCorners => corners;

    /// <summary>Area in square metres, whichever way the corners run.</summary>
    public double AreaSquareMetres => Math.Abs(SignedArea());

    /// <summary>Smallest x and y of any corner.</summary>
    public Point2 Least { get; }

    /// <summary>Largest x and y of any corner.</summary>
    public Point2 Greatest { get; }

    /// <summary>
    /// Whether a point lies inside, by counting the edges to its right. Edges are half open, so two polygons that share
    /// an edge never both claim a point on it.
    /// </summary>
    public bool Contains(Point2 p)
    {
        if (p.X < Least.X || p.X > Greatest.X || p.Y < Least.Y || p.Y > Greatest.Y)
        {
            return false; // so for most polygons of a house
        }

        bool inside = false;
        for (int i = 0, j = corners.Length - 1; i < corners.Length; j = i++)
        {
            Point2 a = corners[j], b = corners[i];
            if (a.Y > p.Y != b.Y > p.Y && p.X < a.X + ((p.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X)))
            {
                inside = !inside;
            }
        }

        return inside;
    }

    /// <summary>Whether a point lies within a distance of any edge, metres.</summary>
    public bool IsOnEdge(Point2 p, double withinMetres) => Math.Abs(DepthOf(p)) <= withinMetres;

    /// <summary>Distance to the nearest edge, metres: above 0 inside, below 0 outside.</summary>
    public double DepthOf(Point2 p) => (Contains(p) ? 1 : -1) * Math.Sqrt(Nearest(p).Squared);

    /// <summary>The place on its edges nearest to a point.</summary>
    public Point2 NearestTo(Point2 p) => Nearest(p).At;

    private (Point2 At, double Squared) Nearest(Point2 p)
    {
        double least = double.PositiveInfinity;
        Point2 nearest = corners[0];
        for (int i = 0, j = corners.Length - 1; i < corners.Length; j = i++)
        {
            Point2 along = corners[i] - corners[j], to = p - corners[j];
            double squared = Point2.Dot(along, along);
            double share = squared > 0 ? Math.Clamp(Point2.Dot(to, along) / squared, 0, 1) : 0;
            Point2 off = to - (share * along);
            double away = Point2.Dot(off, off);
            if (away < least)
            {
                least = away;
                nearest = p - off;
            }
        }

        return (nearest, least);
    }

    private double SignedArea()
    {
        double twice = 0;
        for (int i = 0, j = corners.Length - 1; i < corners.Length; j = i++)
        {
            twice += Point2.Cross(corners[j], corners[i]);
        }

        return twice / 2;
    }
}
