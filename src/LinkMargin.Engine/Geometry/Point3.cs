namespace LinkMargin.Engine.Geometry;

/// <summary>A point in the house, in metres. z runs up from the lowest level's finished floor.</summary>
/// <param name="X">Metres east.</param>
/// <param name="Y">Metres north.</param>
/// <param name="Z">Metres up.</param>
public readonly record struct Point3(double X, double Y, double Z)
{
    /// <summary>The point seen from above.</summary>
    public Point2 Plan => new(X, Y);

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
