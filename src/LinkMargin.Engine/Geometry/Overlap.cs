namespace LinkMargin.Engine.Geometry;

/// <summary>
/// The area that polygons have in common, with its middle and its spread. Each polygon is a signed sum of triangles from a
/// common point; triangles are convex, and what convex polygons share is found by cutting one along the edges of the other.
/// Exact for any simple polygons, however they touch.
/// </summary>
internal readonly record struct Overlap(double SquareMetres, Point2 Middle, Point2 SpreadMetres)
{
    /// <summary>The overlap of polygons seen in a frame: middle and spread along its directions.</summary>
    internal static Overlap Of(PlanFrame frame, params ReadOnlySpan<Polygon> polygons)
    {
        Point2 origin = polygons[0].Corners[0];
        var sums = default(Sums);
        var whole = new List<Point2>();
        Add(frame, polygons, 0, origin, whole, 1, ref sums);
        if (!(sums.Area > 0))
        {
            return default;
        }

        Point2 middle = new(sums.X / sums.Area, sums.Y / sums.Area);
        return new Overlap(
            sums.Area,
            frame.ToPlan(middle.X, middle.Y) + origin,
            new Point2(
                Math.Sqrt(Math.Max(0, (sums.XX / sums.Area) - (middle.X * middle.X))),
                Math.Sqrt(Math.Max(0, (sums.YY / sums.Area) - (middle.Y * middle.Y)))));
    }

    private static void Add(
        PlanFrame frame, ReadOnlySpan<Polygon> polygons, int next, Point2 origin, List<Point2> piece, double sign, ref Sums sums)
    {
        if (next == polygons.Length)
        {
            sums.Add(frame, piece, origin, sign);
            return;
        }

        IReadOnlyList<Point2> corners = polygons[next].Corners;
        for (int i = 0; i < corners.Count; i++)
        {
            Point2 a = corners[i], b = corners[(i + 1) % corners.Count];
            double twice = Point2.Cross(a - origin, b - origin);
            if (twice == 0)
            {
                continue;
            }

            List<Point2> triangle = twice > 0 ? [origin, a, b] : [origin, b, a];
            List<Point2> common = next == 0 ? triangle : Cut(piece, triangle);
            if (common.Count >= 3)
            {
                Add(frame, polygons, next + 1, origin, common, sign * Math.Sign(twice) * Turn(corners), ref sums);
            }
        }
    }

    // 1 for corners anticlockwise, −1 for clockwise.
    private static double Turn(IReadOnlyList<Point2> corners)
    {
        double twice = 0;
        for (int i = 0; i < corners.Count; i++)
        {
            twice += Point2.Cross(corners[i] - corners[0], corners[(i + 1) % corners.Count] - corners[0]);
        }

        return Math.Sign(twice);
    }

    // What of a convex piece lies to the left of all edges of an anticlockwise triangle.
    private static List<Point2> Cut(List<Point2> piece, List<Point2> triangle)
    {
        List<Point2> left = piece;
        for (int e = 0; e < triangle.Count && left.Count >= 3; e++)
        {
            Point2 from = triangle[e], along = triangle[(e + 1) % triangle.Count] - from;
            var kept = new List<Point2>(left.Count + 1);
            for (int i = 0; i < left.Count; i++)
            {
                Point2 p = left[i], q = left[(i + 1) % left.Count];
                double atP = Point2.Cross(along, p - from), atQ = Point2.Cross(along, q - from);
                if (atP >= 0)
                {
                    kept.Add(p);
                }

                if (atP >= 0 != atQ >= 0)
                {
                    kept.Add(p + (atP / (atP - atQ) * (q - p)));
                }
            }

            left = kept;
        }

        return left;
    }

    private struct Sums
    {
        public double Area;
        public double X;
        public double Y;
        public double XX;
        public double YY;

        // Moments of a convex piece as a fan of triangles; of a triangle, from its corners.
        public void Add(PlanFrame frame, List<Point2> piece, Point2 origin, double sign)
        {
            Point2 a = frame.FromPlan(piece[0] - origin);
            for (int i = 1; i + 1 < piece.Count; i++)
            {
                Point2 b = frame.FromPlan(piece[i] - origin), c = frame.FromPlan(piece[i + 1] - origin);
                double area = sign * Point2.Cross(b - a, c - a) / 2;
                Area += area;
                X += area * (a.X + b.X + c.X) / 3;
                Y += area * (a.Y + b.Y + c.Y) / 3;
                XX += area * ((a.X * a.X) + (b.X * b.X) + (c.X * c.X) + (a.X * b.X) + (b.X * c.X) + (c.X * a.X)) / 6;
                YY += area * ((a.Y * a.Y) + (b.Y * b.Y) + (c.Y * c.Y) + (a.Y * b.Y) + (b.Y * c.Y) + (c.Y * a.Y)) / 6;
            }
        }
    }
}
