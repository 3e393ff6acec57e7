using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Scenes;

/// <summary>A flat rectangle of a surface: part of a wall beside its openings, what fills one of them, or a side of a fixture.</summary>
internal readonly struct Face
{
    /// <summary>
    /// Closer than this a place is on a surface, metres: no rounding of a house's coordinates decides where it is pushed. It is no round number,
    /// since rounding would decide for a place drawn at just this distance.
    /// </summary>
    internal const double OnMetres = 1.0837e-4;

    private readonly Point3 middle;
    private readonly Point3 across; // unit vectors in its plane
    private readonly Point3 along;
    private readonly double halfAcross;
    private readonly double halfAlong;
    private readonly Point3 away; // from its plane, to the side that a place on it belongs to; of no length where it has no such side

    private Face(Point3 middle, Point3 across, double halfAcross, Point3 along, double halfAlong, bool hasSide)
    {
        this.middle = middle;
        this.across = across;
        this.along = along;
        this.halfAcross = halfAcross;
        this.halfAlong = halfAlong;
        Normal = across.Cross(along);
        away = hasSide ? Normal : default;
    }

    /// <summary>Its unit normal.</summary>
    private Point3 Normal { get; }

    /// <summary>An upright one between two places on the plan.</summary>
    internal static Face Upright(Point2 start, Point2 end, double low, double high, bool hasSide)
    {
        double length = start.DistanceTo(end);
        Point2 middle = 0.5 * (start + end);
        return new Face(
            middle.At((low + high) / 2), ((1 / length) * (end - start)).At(0), length / 2, new Point3(0, 0, 1), (high - low) / 2, hasSide);
    }

    /// <summary>A level one. A place on it belongs to what is above it, or below.</summary>
    /// <param name="corners">Its four corners, anticlockwise.</param>
    /// <param name="height">Its height.</param>
    /// <param name="facesUp">Whether it belongs to what is above.</param>
    internal static Face Level(ReadOnlySpan<Point2> corners, double height, bool facesUp)
    {
        Point2 east = corners[1] - corners[0], north = corners[3] - corners[0];
        double length = corners[0].DistanceTo(corners[1]), width = corners[0].DistanceTo(corners[3]);
        Point3 across = ((1 / length) * east).At(0), along = ((1 / width) * north).At(0);
        Point3 middle = (0.5 * (corners[0] + corners[2])).At(height);
        return facesUp
            ? new Face(middle, across, length / 2, along, width / 2, true)
            : new Face(middle, along, width / 2, across, length / 2, true);
    }

    /// <summary>Where it is on the plan.</summary>
    internal PlanBox Bounds
    {
        get
        {
            double x = (Math.Abs(across.X) * halfAcross) + (Math.Abs(along.X) * halfAlong);
            double y = (Math.Abs(across.Y) * halfAcross) + (Math.Abs(along.Y) * halfAlong);
            return new PlanBox(middle.X - x, middle.Y - y, middle.X + x, middle.Y + y);
        }
    }

    /// <summary>How far it is from a place, metres, 0 for one on it, and the direction of unit length from its nearest point to there; none where it has no side.</summary>
    internal double DistanceTo(Point3 place, out Point3 direction)
    {
        Point3 to = place - middle;
        Point3 off = to
            - (Math.Clamp(to.Dot(across), -halfAcross, halfAcross) * across)
            - (Math.Clamp(to.Dot(along), -halfAlong, halfAlong) * along);
        double distance = off.Length;
        bool isOn = distance <= OnMetres;
        direction = isOn ? away : (1 / distance) * off;
        return isOn ? 0 : distance;
    }

    /// <summary>How far along a direction of unit length it is met, metres; ∞ where it is not.</summary>
    internal double MetAt(Point3 from, Point3 direction)
    {
        double approach = direction.Dot(Normal);
        if (Math.Abs(approach) <= GeometryTolerances.ParallelSine)
        {
            return double.PositiveInfinity;
        }

        double metres = (middle - from).Dot(Normal) / approach;
        Point3 at = from + (metres * direction) - middle;
        return Math.Abs(at.Dot(across)) <= halfAcross + GeometryTolerances.SlackMetres
            && Math.Abs(at.Dot(along)) <= halfAlong + GeometryTolerances.SlackMetres
            ? metres
            : double.PositiveInfinity;
    }

    /// <summary>All of a house but its floors and ceilings.</summary>
    internal static Face[] Of(Scene scene) =>
    [
        .. scene.House.Levels.SelectMany(level => level.Walls.SelectMany(wall => Of(wall, level.ElevationMetres))),
        .. scene.Boxes.SelectMany(Of),
    ];

    // A wall is the same from both sides, and a place in its middle belongs to neither. A part of next to no length or height has no direction.
    private static IEnumerable<Face> Of(Wall wall, double floor)
    {
        double low = floor + wall.BaseMetres, high = floor + wall.TopMetres, before = 0, length = wall.LengthMetres;
        foreach (Opening opening in wall.Openings.OrderBy(opening => opening.OffsetMetres))
        {
            double from = opening.OffsetMetres, to = from + opening.WidthMetres;
            double sill = floor + opening.SillMetres, head = sill + opening.HeightMetres;
            (double From, double To, double Low, double High)[] parts =
            [
                (before, from, low, high), (from, to, low, sill), (from, to, head, high), .. opening.Filling is null ? [] : new[] { (from, to, sill, head) },
            ];
            foreach (Face part in parts.Where(part => IsAny(part.From, part.To) && IsAny(part.Low, part.High)).Select(part => Part(part.From, part.To, part.Low, part.High)))
            {
                yield return part;
            }

            before = to;
        }

        if (IsAny(before, length) && IsAny(low, high))
        {
            yield return Part(before, length, low, high);
        }

        static bool IsAny(double from, double to) => to - from > GeometryTolerances.SlackMetres;

        Face Part(double from, double to, double bottom, double top) =>
            Upright(wall.Start + ((from / length) * (wall.End - wall.Start)), wall.Start + ((to / length) * (wall.End - wall.Start)), bottom, top, false);
    }

    // Its sides are outside. What is on the underside of a shell stands in it.
    private static IEnumerable<Face> Of(FixtureBox box)
    {
        Point2[] corners = box.Corners.ToArray();
        double low = box.VerticalExtent.Low, high = box.VerticalExtent.High;
        for (int i = 0; i < corners.Length; i++)
        {
            if (HasPanel(FixtureBox.PanelSides[i]))
            {
                yield return Upright(corners[i], corners[(i + 1) % corners.Length], low, high, true);
            }
        }

        if (HasPanel(BoxSides.Bottom))
        {
            yield return Level(corners, low, box.IsShell);
        }

        if (HasPanel(BoxSides.Top))
        {
            yield return Level(corners, high, true);
        }

        bool HasPanel(BoxSides side) => !box.IsShell || box.PanelOn(side) != FixtureBox.Open;
    }
}
