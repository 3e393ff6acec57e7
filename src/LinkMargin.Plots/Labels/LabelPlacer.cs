namespace LinkMargin.Plots.Labels;

/// <summary>
/// Finds places for labels: first beside the mark, then farther out on rings about it, then anywhere free in the frame.
/// Labels are taken in the order given, each at its cheapest candidate; so the result depends on nothing but the input.
/// </summary>
internal sealed class LabelPlacer
{
    // Costs are in heights of a label: how far one would rather move it than suffer.
    private const double OverlapCost = 1e4;
    private const double LeaderOverLabelCost = 12;
    private const double AmbiguityCost = 2;
    private const double AmbiguousWithin = 1.6;
    private const double SoftAreaCost = 2;
    private const double SoftTouchCost = 0.35;
    private const double SoftCrossCost = 1.2;
    private const double UnlikedSideCost = 0.12;
    private const double LeastDistance = 0.1;

    // In heights of a label: farther off it needs a line to its mark.
    private const double NearEnough = 0.75;
    private static readonly double[] RingsInHeights = [0.25, 1.0, 1.9, 3.0, 4.4, 6.0];
    private const int PlacesOnRing = 16;

    private readonly LabelBox frame;
    private readonly List<LabelBox> hard;
    private readonly List<LabelBox> soft;
    private readonly List<LabelBox> ground;
    private readonly double gap;

    /// <summary>Makes a placer for one picture.</summary>
    /// <param name="frame">Labels stay inside.</param>
    /// <param name="hard">What no label may cover.</param>
    /// <param name="soft">What labels had better not cover.</param>
    /// <param name="gap">Clear distance between labels, pixels.</param>
    /// <param name="ground">What no label may cover, but the line from a label to its mark may cross; null for nothing.</param>
    public LabelPlacer(
        LabelBox frame, IEnumerable<LabelBox> hard, IEnumerable<LabelBox> soft, double gap, IEnumerable<LabelBox>? ground = null)
    {
        this.frame = frame;
        this.hard = [.. hard];
        this.soft = [.. soft];
        this.ground = [.. ground ?? []];
        this.gap = gap;
    }

    /// <summary>Places for all requests, in their order. Marks of all requests are kept clear by all labels.</summary>
    public IReadOnlyList<PlacedLabel> Place(IReadOnlyList<LabelRequest> requests)
    {
        var placed = new List<PlacedLabel>(requests.Count);
        List<LabelBox> taken = [.. hard, .. requests.Select(r => r.Mark)];
        foreach (LabelRequest request in requests)
        {
            LabelBox[] others = [.. requests.Where(r => r != request).Select(r => r.Mark)];
            LabelBox best = Around(request).MinBy(b => Cost(b, request, taken, others));
            if (taken.Exists(best.Overlaps) || ground.Exists(best.Overlaps))
            {
                IEnumerable<LabelBox> free = Everywhere(request)
                    .Where(b => !taken.Exists(b.Overlaps) && !ground.Exists(b.Overlaps)).Append(best);
                best = free.MinBy(b => Cost(b, request, taken, others));
            }

            double away = best.DistanceTo(request.X, request.Y) - request.MarkRadius;
            bool isNear = away <= NearEnough * request.Height;
            placed.Add(new(best, !isNear || Ambiguity(best, request, others) > 0 || SoftBetween(best, request) > 0));
            taken.Add(best.Grown(gap));
        }

        return placed;
    }

    private double Cost(LabelBox box, LabelRequest request, List<LabelBox> taken, LabelBox[] otherMarks)
    {
        double own = box.DistanceTo(request.X, request.Y) / request.Height;
        double cost = own + (box.CentreX < request.X - 1 ? UnlikedSideCost : 0);
        foreach (LabelBox other in taken.Concat(ground))
        {
            if (box.Overlaps(other))
            {
                cost += OverlapCost * (1 + (box.SharedArea(other) / (box.Width * box.Height)));
            }
        }

        double endX = Math.Clamp(request.X, box.Left, box.Right), endY = Math.Clamp(request.Y, box.Top, box.Bottom);
        cost += LeaderOverLabelCost * taken.Count(t => t != request.Mark && t.IsCrossedBy(request.X, request.Y, endX, endY));

        cost += AmbiguityCost * Ambiguity(box, request, otherMarks);
        double covered = 0;
        int touched = 0;
        foreach (LabelBox other in soft)
        {
            double shared = other.SharedArea(box);
            covered += shared / (box.Width * box.Height);
            touched += shared > 0 ? 1 : 0;
        }

        // Beyond a wall a label would be read as belonging to the other room.
        return cost
            + (SoftAreaCost * Math.Min(1, covered))
            + (SoftTouchCost * Math.Min(2, touched))
            + (SoftCrossCost * Math.Min(2, SoftBetween(box, request)));
    }

    private int SoftBetween(LabelBox box, LabelRequest request) => soft.Count(s =>
        s.DistanceTo(request.X, request.Y) > 0 && s.IsCrossedBy(request.X, request.Y, box.CentreX, box.CentreY));

    // A label nearly as near to another mark as to its own would be read as the other's: 1 for each that is as near.
    private static double Ambiguity(LabelBox box, LabelRequest request, LabelBox[] otherMarks)
    {
        double near = Math.Max(box.DistanceTo(request.X, request.Y), LeastDistance * request.Height);
        return otherMarks.Sum(
            m => Math.Clamp((AmbiguousWithin - (box.DistanceTo(m.CentreX, m.CentreY) / near)) / (AmbiguousWithin - 1), 0, 1));
    }

    private IEnumerable<LabelBox> Around(LabelRequest r)
    {
        foreach (double ring in RingsInHeights)
        {
            double away = r.MarkRadius + (ring * r.Height);
            for (int i = 0; i < PlacesOnRing; i++)
            {
                double angle = 2 * Math.PI * i / PlacesOnRing;
                double cosine = Math.Cos(angle), sine = Math.Sin(angle);

                // The box touches the ring from outside on the side it lies on.
                double x = r.X + (cosine * away) + (Math.Round(cosine, 6) switch { 0 => 0, > 0 => 0.5, _ => -0.5 } * r.Width);
                double y = r.Y + (sine * away) + (Math.Clamp(1.5 * sine, -1, 1) * 0.5 * r.Height);
                yield return Inside(LabelBox.Around(x, y, r.Width / 2, r.Height / 2));
            }
        }
    }

    private IEnumerable<LabelBox> Everywhere(LabelRequest r)
    {
        double step = r.Height / 3;
        for (double top = frame.Top; top + r.Height <= frame.Bottom; top += step)
        {
            for (double left = frame.Left; left + r.Width <= frame.Right; left += step)
            {
                yield return new(left, top, left + r.Width, top + r.Height);
            }
        }
    }

    // Pushed in from a side, a box ends exactly on it; added and taken away again it might end a hair outside.
    private LabelBox Inside(LabelBox box)
    {
        (double left, double right) = Inside(box.Left, box.Right, frame.Left, frame.Right);
        (double top, double bottom) = Inside(box.Top, box.Bottom, frame.Top, frame.Bottom);
        return new(left, top, right, bottom);
    }

    private static (double From, double To) Inside(double from, double to, double least, double greatest) =>
        from < least ? (least, least + (to - from)) : to > greatest ? (greatest - (to - from), greatest) : (from, to);
}
