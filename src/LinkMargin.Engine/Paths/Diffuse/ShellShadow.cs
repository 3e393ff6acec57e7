using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// What a shell hides from a place. Planes through the place and the edges of the shell's outline bound its shadow, which lies behind the faces
/// that the place sees. A patch of a surface is hidden as far as it lies within those planes: half of it where its middle lies in one, all of
/// it or nothing where its middle is half the patch's side away. So no patch appears or vanishes abruptly when a place moves.
/// </summary>
internal readonly ref struct ShellShadow
{
    /// <summary>The most planes that bound a shadow.</summary>
    internal const int MostPlanes = 6;

    // A face that the place lies less than this in front of is seen at a flat angle: patches need not lie behind its plane, metres.
    private const double FlatMetres = 0.3;

    // A place is in front of a face from this little behind it, metres: rounding decides on which side of an open face it lies.
    private const double BehindMetres = 2 * GeometryTolerances.SlackMetres;

    private readonly Point3 place;
    private readonly Axis east;
    private readonly Axis north;
    private readonly Axis up;
    private readonly ReadOnlySpan<Point3> planes; // the unit normal of each, towards the shell

    /// <summary>The shadow of a shell from a place.</summary>
    /// <param name="box">The shell.</param>
    /// <param name="place">The place.</param>
    /// <param name="room">Room for the planes.</param>
    internal ShellShadow(FixtureBox box, Point3 place, Span<Point3> room)
    {
        this.place = place;
        east = Axis.Of(box, box.OutwardOf(1).At(0), place);
        north = Axis.Of(box, box.OutwardOf(2).At(0), place);
        up = Axis.Of(box, new(0, 0, 1), place);
        int count = 0;
        AddPlanes(east, north, up, room, ref count);
        AddPlanes(north, up, east, room, ref count);
        AddPlanes(up, east, north, room, ref count);
        planes = room[..count];
    }

    /// <summary>Share of a patch that is hidden.</summary>
    /// <param name="middle">The middle of the patch.</param>
    /// <param name="halfMetres">Half its side.</param>
    internal double Hidden(Point3 middle, double halfMetres)
    {
        if (planes.IsEmpty)
        {
            return 0;
        }

        Point3 to = middle - place;
        double inside = double.PositiveInfinity;
        foreach (Point3 plane in planes)
        {
            inside = Math.Min(inside, plane.Dot(to));
        }

        double hidden = Math.Clamp((1 + (inside / halfMetres)) / 2, 0, 1);
        return hidden == 0 ? 0 : hidden * Math.Min(east.Behind(middle, halfMetres), Math.Min(north.Behind(middle, halfMetres), up.Behind(middle, halfMetres)));
    }

    // The planes through those edges along an axis that one visible face and one hidden face share.
    private static void AddPlanes(in Axis one, in Axis other, in Axis along, Span<Point3> room, ref int count)
    {
        for (int side = -1; side <= 1; side += 2)
        {
            for (int otherSide = -1; otherSide <= 1; otherSide += 2)
            {
                double toOne = (side * one.Half) - one.At, toOther = (otherSide * other.Half) - other.At;
                double length = double.Hypot(toOne, toOther);
                if (one.Sees(side) != other.Sees(otherSide) && length > 0)
                {
                    // Perpendicular to the axis and to the line from the place to the edge.
                    Point3 normal = ((toOther / length) * one.Direction) - ((toOne / length) * other.Direction);
                    double middle = (toOne * other.At) - (toOther * one.At);
                    room[count++] = middle >= 0 ? normal : -normal;
                }
            }
        }
    }

    // One of the shell's directions: its unit vector, half the shell's size along it, where its middle and the place lie.
    private readonly record struct Axis(Point3 Direction, double Half, double Middle, double At)
    {
        internal static Axis Of(FixtureBox box, Point3 direction, Point3 place)
        {
            (double middle, double half) = box.Along(direction);
            return new Axis(direction, half, middle, direction.Dot(place) - middle);
        }

        // Whether the place sees the face on a side.
        internal bool Sees(int side) => (side * At) - Half >= -BehindMetres;

        // Share of a patch that may lie behind the face that the place sees: all where its middle does, nothing half its side in front.
        internal double Behind(Point3 middle, double halfMetres)
        {
            double before = Math.Abs(At) - Half;
            if (before < -BehindMetres)
            {
                return 1;
            }

            double depth = Half - (Math.Sign(At) * (Direction.Dot(middle) - Middle));
            return Math.Max(Math.Clamp(1 + (depth / halfMetres), 0, 1), 1 - Math.Clamp(before / FlatMetres, 0, 1));
        }
    }
}
