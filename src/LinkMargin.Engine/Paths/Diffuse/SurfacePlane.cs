using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>A plane of the house with two directions in it, perpendicular to each other and to its normal, all of unit length.</summary>
/// <param name="Origin">A point of it.</param>
/// <param name="Along">One direction: level.</param>
/// <param name="Up">The other: upright for a wall or a side, level for a lid.</param>
/// <param name="Normal">The direction it faces.</param>
internal readonly record struct SurfacePlane(Point3 Origin, Point3 Along, Point3 Up, Point3 Normal)
{
    // Things at a smaller angle than this to a plane count as parallel to it: one in fifty, about 1°.
    private const double AlongSine = 0.02;

    /// <summary>The plane of a wall, from its left to its right.</summary>
    internal static SurfacePlane Of(Wall wall, double floorMetres)
    {
        Point2 along = (1 / wall.LengthMetres) * (wall.End - wall.Start);
        return new SurfacePlane(wall.Start.At(floorMetres), along.At(0), new(0, 0, 1), new Point2(along.Y, -along.X).At(0));
    }

    /// <summary>The plane of a box's side, facing outwards.</summary>
    internal static SurfacePlane Of(FixtureBox box, int side)
    {
        BoxSides name = FixtureBox.AllSides[side];
        if (name is BoxSides.Top or BoxSides.Bottom)
        {
            double height = name == BoxSides.Top ? box.VerticalExtent.High : box.VerticalExtent.Low;
            Point2 east = box.OutwardOf(1), north = box.OutwardOf(2);
            return new SurfacePlane(box.Centre.At(height), east.At(0), north.At(0), new(0, 0, name == BoxSides.Top ? 1 : -1));
        }

        Point2 start = box.Corners[side], outward = box.OutwardOf(side);
        return new SurfacePlane(start.At(0), new Point2(-outward.Y, outward.X).At(0), new(0, 0, 1), outward.At(0));
    }

    /// <summary>The rectangle of it that a box covers, seen along its normal.</summary>
    internal Rectangle ShadowOf(FixtureBox box)
    {
        (double along, double halfAlong) = Across(box, Along);
        (double up, double halfUp) = Across(box, Up);
        return new Rectangle(along - halfAlong, along + halfAlong, up - halfUp, up + halfUp);
    }

    /// <summary>The nearest and farthest distance of a box in front of it, metres; below 0 behind it.</summary>
    internal (double Near, double Far) DistancesOf(FixtureBox box)
    {
        (double middle, double half) = Across(box, Normal);
        return (middle - half, middle + half);
    }

    /// <summary>Whether a side of a box is parallel to it.</summary>
    internal bool HasAlong(FixtureBox box) => box.IsAlong(Normal.Z == 0 ? Normal : Along, AlongSine);

    /// <summary>The corners of one of its rectangles.</summary>
    internal Point3[] Corners(Rectangle of) =>
        [At(of.Left, of.Low), At(of.Right, of.Low), At(of.Right, of.High), At(of.Left, of.High)];

    /// <summary>One of its rectangles as a rectangle of a parallel plane.</summary>
    internal Rectangle In(SurfacePlane other, Rectangle of)
    {
        Point3 a = other.Place(At(of.Left, of.Low)), b = other.Place(At(of.Right, of.High));
        return new Rectangle(Math.Min(a.X, b.X), Math.Max(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.Y, b.Y));
    }

    private (double Middle, double Half) Across(FixtureBox box, Point3 direction)
    {
        (double middle, double half) = box.Along(direction);
        return (middle - direction.Dot(Origin), half);
    }

    private Point3 At(double along, double up) => Origin + (along * Along) + (up * Up);

    private Point3 Place(Point3 at)
    {
        Point3 from = at - Origin;
        return new(from.Dot(Along), from.Dot(Up), from.Dot(Normal));
    }
}

/// <summary>A rectangle in a plane, metres.</summary>
internal readonly record struct Rectangle(double Left, double Right, double Low, double High)
{
    /// <summary>Whether it has any area.</summary>
    internal bool IsAny => Right - Left > GeometryTolerances.SlackMetres && High - Low > GeometryTolerances.SlackMetres;

    /// <summary>Its area.</summary>
    internal double SquareMetres => (Right - Left) * (High - Low);

    /// <summary>What it shares with another.</summary>
    internal Rectangle With(Rectangle other) => new(
        Math.Max(Left, other.Left), Math.Min(Right, other.Right), Math.Max(Low, other.Low), Math.Min(High, other.High));

    /// <summary>What is left of it without another, as rectangles.</summary>
    internal IEnumerable<Rectangle> Without(Rectangle other)
    {
        Rectangle shared = With(other);
        if (!shared.IsAny)
        {
            return [this];
        }

        Rectangle[] left =
        [
            this with { Right = shared.Left },
            this with { Left = shared.Right },
            shared with { Low = Low, High = shared.Low },
            shared with { Low = shared.High, High = High },
        ];
        return left.Where(rectangle => rectangle.IsAny);
    }
}
