namespace LinkMargin.Engine.Geometry;

/// <summary>A point in the house, in metres. z runs up from the lowest level's finished floor.</summary>
/// <param name="X">Metres east.</param>
/// <param name="Y">Metres north.</param>
/// <param name="Z">Metres up.</param>
public readonly record struct Point3(double X, double Y, double Z)
{
    /// <summary>The point seen from above.</summary>
    public Point2 Plan => new(X, Y);

    // Not public: a record prints its public properties, and one that is itself a point would print without end.
    internal double Length => Math.Sqrt(Dot(this));

    internal Point3 Unit => (1 / Length) * this;

    /// <summary>The sum, coordinate by coordinate.</summary>
    public static Point3 operator +(Point3 a, Point3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>The vector from b to a.</summary>
    public static Point3 operator -(Point3 a, Point3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>The vector the other way.</summary>
    public static Point3 operator -(Point3 a) => new(-a.X, -a.Y, -a.Z);

    /// <summary>A multiple of a vector.</summary>
    public static Point3 operator *(double times, Point3 a) => new(times * a.X, times * a.Y, times * a.Z);

    /// <summary>The scalar product, square metres for two vectors in metres.</summary>
    public double Dot(Point3 other) => (X * other.X) + (Y * other.Y) + (Z * other.Z);

    /// <summary>The vector product.</summary>
    public Point3 Cross(Point3 other) => new((Y * other.Z) - (Z * other.Y), (Z * other.X) - (X * other.Z), (X * other.Y) - (Y * other.X));

    /// <summary>Distance to another point, in metres.</summary>
    public double DistanceTo(Point3 other)
    {
        double dx = X - other.X, dy = Y - other.Y, dz = Z - other.Z;
        return Math.Sqrt((dx * dx) + (dy * dy) + (dz * dz));
    }

    /// <summary>The point a share <paramref name="t"/> of the way to another; 0 is here, 1 is there.</summary>
    public Point3 Towards(Point3 other, double t) =>
        new(X + (t * (other.X - X)), Y + (t * (other.Y - Y)), Z + (t * (other.Z - Z)));
}
