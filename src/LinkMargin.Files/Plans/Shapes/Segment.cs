using LinkMargin.Engine.Geometry;

namespace LinkMargin.Files.Plans.Shapes;

/// <summary>A straight stretch on the plan, from one end to the other, longer than nothing.</summary>
internal readonly record struct Segment(Point2 Start, Point2 End)
{
    /// <summary>Beyond this sine of the angle between them two stretches never lie along each other, however short.</summary>
    private const double SteepSine = 0.1;

    /// <summary>Length, metres.</summary>
    internal double Length => Start.DistanceTo(End);

    /// <summary>Unit vector from start to end.</summary>
    internal Point2 Direction => new((End.X - Start.X) / Length, (End.Y - Start.Y) / Length);

    /// <summary>Unit vector to the right of it: out of the room whose edge it is, since outlines run anticlockwise.</summary>
    internal Point2 Outward => new(Direction.Y, -Direction.X);

    /// <summary>The same stretch from its other end.</summary>
    internal Segment Reversed => new(End, Start);

    /// <summary>Whether it runs more north than east.</summary>
    internal bool RunsNorth => Math.Abs(End.Y - Start.Y) > (Math.Abs(End.X - Start.X) * (1 + 1e-9)) + 1e-9;

    /// <summary>The same stretch from its west end, or from its south end where it runs more north than east.</summary>
    internal Segment Canonical => (RunsNorth ? End.Y < Start.Y : End.X < Start.X) ? Reversed : this;

    /// <summary>The point this many metres from the start.</summary>
    internal Point2 PointAt(double alongMetres) => Start + (alongMetres * Direction);

    /// <summary>How far along the stretch a point stands, metres from the start.</summary>
    internal double Along(Point2 p) => Point2.Dot(p - Start, Direction);

    /// <summary>How far to the left of the stretch's line a point stands, metres.</summary>
    internal double Across(Point2 p) => Point2.Cross(Direction, p - Start);

    /// <summary>The point of the stretch's endless line nearest to a point.</summary>
    internal Point2 Foot(Point2 p) => PointAt(Along(p));

    /// <summary>The point of the stretch nearest to a point.</summary>
    internal Point2 NearestTo(Point2 p)
    {
        double along = Along(p);
        return along <= 0 ? Start : along >= Length ? End : PointAt(along);
    }

    /// <summary>Distance to a point, metres.</summary>
    internal double DistanceTo(Point2 p) => NearestTo(p).DistanceTo(p);

    /// <summary>Another stretch seen along this one, not cut to its ends.</summary>
    internal Span Shadow(Segment other)
    {
        double a = Along(other.Start), b = Along(other.End);
        return new Span(Math.Min(a, b), Math.Max(a, b));
    }

    /// <summary>
    /// The part of this stretch another lies along, or null. They lie along each other when the shorter one's ends are
    /// within the tolerance of the longer one's line and the common part is longer than a corner's tolerance.
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

    /// <summary>Whether the shorter one's ends are within the tolerance of the longer one's endless line.</summary>
    internal bool IsInLineWith(Segment other, double toleranceMetres)
    {
        (Segment longer, Segment shorter) = Length >= other.Length ? (this, other) : (other, this);
        double slack = toleranceMetres + PlanLimits.RoundingMetres;
        return Math.Abs(Point2.Cross(Direction, other.Direction)) <= SteepSine
            && Math.Abs(longer.Across(shorter.Start)) <= slack
            && Math.Abs(longer.Across(shorter.End)) <= slack;
    }

    /// <summary>Whether the two run within the parallel angle of each other, either way round.</summary>
    internal bool IsParallelTo(Segment other) =>
        Math.Abs(Point2.Cross(Direction, other.Direction)) <= PlanLimits.ParallelSine + 1e-9;
}

/// <summary>A stretch along a segment, metres from its start.</summary>
internal readonly record struct Span(double From, double To)
{
    /// <summary>Length, metres; below zero where the stretch is empty.</summary>
    internal double Length => To - From;

    /// <summary>Middle, metres from the segment's start.</summary>
    internal double Middle => (From + To) / 2;

    /// <summary>What both cover; its length is below zero where they do not meet.</summary>
    internal Span Meet(Span other) => new(Math.Max(From, other.From), Math.Min(To, other.To));

    /// <summary>What remains of this stretch after others are taken away, longer than a corner's tolerance.</summary>
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
