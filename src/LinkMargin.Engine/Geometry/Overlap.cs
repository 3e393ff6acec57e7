namespace LinkMargin.Engine.Geometry;

/// <summary>
/// The area that polygons have in common, with its centroid and its spread. Each polygon is a signed sum of triangles from a
/// common point; triangles are convex, and convex polygons are intersected by clipping one along the edges of the other.
/// Exact for any simple polygons, however they touch.
/// </summary>
internal readonly record struct Overlap(double SquareMetres, Point2 Middle, Point2 SpreadMetres)
{
    /// <summary>The overlap of polygons, with its spread along the directions of a frame.</summary>
    internal static Overlap Of(PlanFrame frame, params ReadOnlySpan<Polygon> polygons)
    {
        if (AreApart(polygons))
        {
            return default;
        }

        Point2 origin = polygons[0].AllCorners[0];
        var sums = default(Sums);
        Add(frame, polygons, origin, [], 1, ref sums);
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

    /// <summary>Whether the boxes around polygons have nothing in common.</summary>
    internal static bool AreApart(params ReadOnlySpan<Polygon> polygons)
    {
        double left = double.NegativeInfinity, right = double.PositiveInfinity, bottom = left, top = right;
        foreach (Polygon polygon in polygons)
        {
            left = Math.Max(left, polygon.Least.X);
            right = Math.Min(right, polygon.Greatest.X);
            bottom = Math.Max(bottom, polygon.Least.Y);
            top = Math.Min(top, polygon.Greatest.Y);
        }

        return left >= right || bottom >= top;
    }

    // Adds what a convex piece (empty: the whole plane) has in common with the polygons.
    private static void Add(
        PlanFrame frame, ReadOnlySpan<Polygon> polygons, Point2 origin, ReadOnlySpan<Point2> piece, double sign, ref Sums sums)
    {
        if (polygons.IsEmpty)
        {
            sums.Add(frame, piece, origin, sign);
            return;
        }

        ReadOnlySpan<Point2> corners = polygons[0].AllCorners;
        double turn = Turn(corners);
        // A cut adds one corner for each run of corners it removes: one run of a convex piece; with rounding, at most half its corners.
        Span<Point2> common = stackalloc Point2[4 * Math.Max(1, piece.Length)];
        for (int i = 0; i < corners.Length; i++)
        {
            Point2 a = corners[i], b = corners[(i + 1) % corners.Length];
            double twice = Point2.Cross(a - origin, b - origin);
            if (twice == 0)
            {
                continue;
            }

            ReadOnlySpan<Point2> triangle = twice > 0 ? [origin, a, b] : [origin, b, a];
            int count = Cut(piece, triangle, common);
            if (count >= 3)
            {
                Add(frame, polygons[1..], origin, common[..count], sign * Math.Sign(twice) * turn, ref sums);
            }
        }
    }

    // 1 for corners anticlockwise, −1 for clockwise.
    private static double Turn(ReadOnlySpan<Point2> corners)
    {
        double twice = 0;
        for (int i = 0; i < corners.Length; i++)
        {
            twice += Point2.Cross(corners[i] - corners[0], corners[(i + 1) % corners.Length] - corners[0]);
        }

        return Math.Sign(twice);
    }

    // Clips a convex piece (empty: the whole plane) to an anticlockwise triangle. Returns how many corners are left.
    private static int Cut(ReadOnlySpan<Point2> piece, ReadOnlySpan<Point2> triangle, Span<Point2> common)
    {
        if (piece.IsEmpty)
        {
            triangle.CopyTo(common);
            return triangle.Length;
        }

        Span<Point2> left = stackalloc Point2[common.Length];
        piece.CopyTo(common);
        int count = piece.Length;
        for (int e = 0; e < triangle.Length && count >= 3; e++)
        {
            Point2 from = triangle[e], along = triangle[(e + 1) % triangle.Length] - from;
            common[..count].CopyTo(left);
            int kept = 0;
            for (int i = 0; i < count; i++)
            {
                Point2 p = left[i], q = left[(i + 1) % count];
                double atP = Point2.Cross(along, p - from), atQ = Point2.Cross(along, q - from);
                if (atP >= 0)
                {
                    common[kept++] = p;
                }

                if (atP >= 0 != atQ >= 0)
                {
                    common[kept++] = p + (atP / (atP - atQ) * (q - p));
                }
            }

            count = kept;
        }

        return count;
    }

    private struct Sums
    {
        public double Area;
        public double X;
        public double Y;
        public double XX;
        public double YY;

        // Moments of a convex piece as a fan of triangles; of a triangle, from its corners.
        public void Add(PlanFrame frame, ReadOnlySpan<Point2> piece, Point2 origin, double sign)
        {
            Point2 a = frame.FromPlan(piece[0] - origin);
            for (int i = 1; i + 1 < piece.Length; i++)
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
