namespace LinkMargin.Engine.Geometry;

/// <summary>A point on a level's plan, in metres. x runs east, y runs north.</summary>
/// <param name="X">Metres east of the plan's origin.</param>
/// <param name="Y">Metres north of the plan's origin.</param>
public readonly record struct Point2(double X, double Y)
{
    /// <summary>Component-wise sum.</summary>
    public static Point2 operator +(Point2 a, Point2 b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>Component-wise difference: the vector from <paramref name="b"/> to <paramref name="a"/>.</summary>
    public static Point2 operator -(Point2 a, Point2 b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>A vector stretched by a factor.</summary>
    public static Point2 operator *(double factor, Point2 a) => new(factor * a.X, factor * a.Y);

    /// <summary>Distance to another point, in metres.</summary>
    public double DistanceTo(Point2 other) => double.Hypot(X - other.X, Y - other.Y);

    /// <summary>z component of the cross product of two plan vectors; positive when <paramref name="b"/> lies to the left.</summary>
    public static double Cross(Point2 a, Point2 b) => (a.X * b.Y) - (a.Y * b.X);

    /// <summary>Dot product of two plan vectors.</summary>
    public static double Dot(Point2 a, Point2 b) => (a.X * b.X) + (a.Y * b.Y);

    /// <summary>The same point at a height.</summary>
    public Point3 At(double z) => new(X, Y, z);
}
