using LinkMargin.Engine.Geometry;

namespace LinkMargin.Files.Plans.Shapes;

/// <summary>A straight segment on the plan with a length above 0.</summary>
internal readonly record struct Segment(Point2 Start, Point2 End)
{
    /// <summary>If the sine of the angle between two segments is larger, they never lie along each other, however short they are.</summary>
    private const double SteepSine = 0.1;

    /// <summary>Length, metres.</summary>
    internal double Length => Start.DistanceTo(End);

    /// <summary>Unit vector from start to end.</summary>
    internal Point2 Direction => new((End.X - Start.X) / Length, (End.Y - Start.Y) / Length);

    /// <summary>Unit vector to its right: out of the room whose edge it is, since outlines run anticlockwise.</summary>
    internal Point2 Outward => new(Direction.Y, -Direction.X);

    /// <summary>The same segment in the other direction.</summary>
    internal Segment Reversed => new(End, Start);

    /// <summary>Whether it runs more north than east.</summary>
    internal bool RunsNorth => Math.Abs(End.Y - Start.Y) > (Math.Abs(End.X - Start.X) * (1 + 1e-9)) + 1e-9;

    /// <summary>The same segment from its west end, or from its south end if it runs more north than east.</summary>
    internal Segment Canonical => (RunsNorth ? End.Y < Start.Y : End.X < Start.X) ? Reversed : this;

    /// <summary>The point this many metres from the start.</summary>
    internal Point2 PointAt(double alongMetres) => Start + (alongMetres * Direction);

    /// <summary>Position of a point along the segment, metres from the start.</summary>
    internal double Along(Point2 p) => Point2.Dot(p - Start, Direction);

    /// <summary>Distance of a point to the left of the segment's line, metres.</summary>
    internal double Across(Point2 p) => Point2.Cross(Direction, p - Start);

    /// <summary>The point nearest to a given point on the segment's infinite line.</summary>
    internal Point2 Foot(Point2 p) => PointAt(Along(p));

    /// <summary>The point of the segment nearest to a given point.</summary>
    internal Point2 NearestTo(Point2 p)
    {
        double along = Along(p);
        return along <= 0 ? Start : along >= Length ? End : PointAt(along);
    }

    /// <summary>Distance to a point, metres.</summary>
    internal double DistanceTo(Point2 p) => NearestTo(p).DistanceTo(p);

    /// <summary>The projection of another segment onto this one's line, not clipped to its ends.</summary>
    internal Span Shadow(Segment other)
    {
        double a = Along(other.Start), b = Along(other.End);
        return new Span(Math.Min(a, b), Math.Max(a, b));
    }

    /// <summary>
    /// The part of this segment that another lies along, or null. They lie along each other if the shorter one's ends are within
    /// the tolerance of the longer one's line and the common part is longer than the corner tolerance.
    /// </summary>
    internal Span? Shared(Segment other, double toleranceMetres)
    {
        if (!IsInLineWith(other, toleranceMetres))
        {
            return null;
        }

        Span common = Shadow(other).Meet(new Span(0, Length));
        return common.Length > PlanLimits.JoinMetres ? common : null;
    }

    /// <summary>Whether the shorter one's ends are within the tolerance of the longer one's infinite line.</summary>
    internal bool IsInLineWith(Segment other, double toleranceMetres)
    {
        (Segment longer, Segment shorter) = Length >= other.Length ? (this, other) : (other, this);
        double slack = toleranceMetres + PlanLimits.RoundingMetres;
        return Math.Abs(Point2.Cross(Direction, other.Direction)) <= SteepSine
            && Math.Abs(longer.Across(shorter.Start)) <= slack
            && Math.Abs(longer.Across(shorter.End)) <= slack;
    }

    /// <summary>Whether the two are parallel within the tolerance, in the same or the opposite direction.</summary>
    internal bool IsParallelTo(Segment other) =>
        Math.Abs(Point2.Cross(Direction, other.Direction)) <= PlanLimits.ParallelSine + 1e-9;
}

/// <summary>An interval along a segment, metres from its start.</summary>
internal readonly record struct Span(double From, double To)
{
    /// <summary>Length, metres; negative if the interval is empty.</summary>
    internal double Length => To - From;

    /// <summary>Middle, metres from the segment's start.</summary>
    internal double Middle => (From + To) / 2;

    /// <summary>The overlap of the two; its length is negative if they do not overlap.</summary>
    internal Span Meet(Span other) => new(Math.Max(From, other.From), Math.Min(To, other.To));

    /// <summary>What remains after others are subtracted; only parts longer than the corner tolerance.</summary>
    internal IEnumerable<Span> Less(IEnumerable<Span> others)
    {
        double from = From;
        foreach (Span taken in others.OrderBy(s => s.From))
        {
            if (taken.From - from > PlanLimits.JoinMetres)
            {
                yield return new Span(from, Math.Min(taken.From, To));
            }

            from = Math.Max(from, taken.To);
        }

        if (To - from > PlanLimits.JoinMetres)
        {
            yield return new Span(from, To);
        }
    }
}
