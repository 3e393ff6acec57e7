namespace LinkMargin.Plots.Labels;

/// <summary>
/// Finds places for labels: first beside the mark, then further out on rings around it, then anywhere free in the frame.
/// Labels are placed in the given order, each at its cheapest candidate, so the result depends only on the input.
/// </summary>
internal sealed class LabelPlacer
{
    // Costs are in label heights: how far it is worth moving the label to avoid the defect.
    private const double OverlapCost = 1e4;
    private const double LeaderOverLabelCost = 12;
    private const double AmbiguityCost = 2;
    private const double AmbiguousWithin = 1.6;
    private const double SoftAreaCost = 2;
    private const double SoftTouchCost = 0.35;
    private const double SoftCrossCost = 1.2;
    private const double GroundCrossCost = 8;
    private const double UnlikedSideCost = 0.12;
    private const double LeastDistance = 0.1;

    // More than this does not make a candidate worse, to save counting through a crowd of marks.
    private const double MostAmbiguity = 4;
    private const int MostSoft = 2;

    // In label heights: a label further away needs a line to its mark.
    private const double NearEnough = 0.75;

    private readonly LabelCandidates candidates;
    private readonly BoxIndex taken;
    private readonly BoxIndex soft;
    private readonly BoxIndex ground;
    private readonly double gap;

    // Sizes with no free place in the frame; taken ground only grows, so they never get one.
    private readonly List<(double Width, double Height)> full = [];

    /// <summary>Makes a placer for one picture.</summary>
    /// <param name="frame">Labels stay inside it.</param>
    /// <param name="hard">Ground that no label may cover.</param>
    /// <param name="soft">Ground that labels should not cover.</param>
    /// <param name="gap">Clear distance between labels, pixels.</param>
    /// <param name="ground">Ground that no label may cover, but that the line to its mark may cross; null for none.</param>
    public LabelPlacer(
        LabelBox frame, IEnumerable<LabelBox> hard, IEnumerable<LabelBox> soft, double gap, IEnumerable<LabelBox>? ground = null)
    {
        candidates = new(frame);
        taken = new(hard);
        this.soft = new(soft);
        this.ground = new(ground ?? []);
        this.gap = gap;
    }

    /// <summary>How many boxes were checked so far, as a measure of work.</summary>
    public long Looks => taken.Looks + soft.Looks + ground.Looks;

    /// <summary>
    /// Places for all requests, in their order; if nothing is free, on top of something. All labels keep clear of the marks of all
    /// requests.
    /// </summary>
    public IReadOnlyList<PlacedLabel> Place(IReadOnlyList<LabelRequest> requests)
    {
        BoxIndex marks = Take(requests);
        return [.. requests.Select(r => Keep(Near(r, requests, marks) ?? Anywhere(r, requests, marks), r, requests, marks))];
    }

    /// <summary>The same, but only free places near their marks; null for a label without one.</summary>
    /// <param name="requests">The labels.</param>
    /// <param name="mayCross">Whether the line of a label, by its index, may cross other labels; null if all may.</param>
    /// <param name="mayCrossGround">The same for ground that no label may cover.</param>
    public IReadOnlyList<PlacedLabel?> PlaceFree(
        IReadOnlyList<LabelRequest> requests, Func<int, bool>? mayCross = null, Func<int, bool>? mayCrossGround = null)
    {
        BoxIndex marks = Take(requests);
        return
        [
            .. requests.Select((r, i) => Near(r, requests, marks) is LabelBox box
                && (mayCross is null || mayCross(i) || Crossed(taken, box, r) == 0)
                && (mayCrossGround is null || mayCrossGround(i) || GroundCrossed(box, r) == 0)
                ? Keep(box, r, requests, marks)
                : null),
        ];
    }

    private BoxIndex Take(IReadOnlyList<LabelRequest> requests)
    {
        foreach (LabelRequest request in requests)
        {
            taken.Add(request.Mark);
        }

        return new(requests.Select(r => r.Mark));
    }

    private PlacedLabel Keep(LabelBox box, LabelRequest request, IReadOnlyList<LabelRequest> requests, BoxIndex marks)
    {
        taken.Add(box.Grown(gap));
        double away = box.DistanceTo(request.X, request.Y) - request.MarkRadius;
        bool isNear = away <= NearEnough * request.Height;
        return new(box, !isNear || Ambiguity(box, request, requests, marks) > 0 || SoftBetween(box, request) > 0);
    }

    private bool IsFree(LabelBox box) => !taken.Overlaps(box) && !ground.Overlaps(box);

    private LabelBox? Near(LabelRequest request, IReadOnlyList<LabelRequest> requests, BoxIndex marks)
    {
        LabelBox? best = null;
        double least = double.PositiveInfinity;
        foreach (LabelBox box in candidates.Around(request).Where(IsFree))
        {
            double cost = Cost(box, request, requests, marks);
            if (cost < least)
            {
                (best, least) = (box, cost);
            }
        }

        return best;
    }

    private LabelBox Anywhere(LabelRequest request, IReadOnlyList<LabelRequest> requests, BoxIndex marks)
    {
        if (!full.Exists(f => f.Width <= request.Width && f.Height <= request.Height))
        {
            LabelBox? best = null;
            double least = double.PositiveInfinity;
            foreach (LabelBox box in candidates.Everywhere(request))
            {
                // No candidate costs less than its distance.
                if (box.DistanceTo(request.X, request.Y) / request.Height <= least && IsFree(box))
                {
                    double cost = Cost(box, request, requests, marks);
                    if (cost < least)
                    {
                        (best, least) = (box, cost);
                    }
                }
            }

            if (best is LabelBox free)
            {
                return free;
            }

            full.Add((request.Width, request.Height));
        }

        return candidates.Around(request).MinBy(b => Cost(b, request, requests, marks) + OverlapCostOf(b));
    }

    private double OverlapCostOf(LabelBox box) => OverlapCostOf(box, taken) + OverlapCostOf(box, ground);

    private static double OverlapCostOf(LabelBox box, BoxIndex others)
    {
        double cost = 0;
        foreach (int i in others.Near(box))
        {
            if (box.Overlaps(others[i]))
            {
                cost += OverlapCost * (1 + (box.SharedArea(others[i]) / (box.Width * box.Height)));
            }
        }

        return cost;
    }

    private double Cost(LabelBox box, LabelRequest request, IReadOnlyList<LabelRequest> requests, BoxIndex marks)
    {
        double own = box.DistanceTo(request.X, request.Y) / request.Height;
        double cost = own + (box.CentreX < request.X - 1 ? UnlikedSideCost : 0);
        cost += (LeaderOverLabelCost * Crossed(taken, box, request)) + (GroundCrossCost * GroundCrossed(box, request));
        cost += AmbiguityCost * Ambiguity(box, request, requests, marks);
        double covered = 0;
        int touched = 0;
        foreach (int i in soft.Near(box))
        {
            double shared = soft[i].SharedArea(box);
            covered += shared / (box.Width * box.Height);
            touched += shared > 0 ? 1 : 0;
            if (covered >= 1 && touched >= MostSoft)
            {
                break;
            }
        }

        // Beyond a wall a label would seem to belong to the other room.
        return cost
            + (SoftAreaCost * Math.Min(1, covered))
            + (SoftTouchCost * Math.Min(MostSoft, touched))
            + (SoftCrossCost * SoftBetween(box, request));
    }

    private int GroundCrossed(LabelBox box, LabelRequest request) => Math.Min(MostSoft, Crossed(ground, box, request));

    // How many boxes the line from a label to its mark would cross, without those that the mark itself touches.
    private static int Crossed(BoxIndex boxes, LabelBox box, LabelRequest request)
    {
        double endX = Math.Clamp(request.X, box.Left, box.Right), endY = Math.Clamp(request.Y, box.Top, box.Bottom);
        int crossed = 0;
        foreach (int i in boxes.Near(Between(request.X, request.Y, endX, endY)))
        {
            crossed += boxes[i].DistanceTo(request.X, request.Y) > 0 && boxes[i].IsCrossedBy(request.X, request.Y, endX, endY) ? 1 : 0;
        }

        return crossed;
    }

    private int SoftBetween(LabelBox box, LabelRequest request)
    {
        int between = 0;
        foreach (int i in soft.Near(Between(request.X, request.Y, box.CentreX, box.CentreY)))
        {
            LabelBox s = soft[i];
            if (s.DistanceTo(request.X, request.Y) > 0
                && s.IsCrossedBy(request.X, request.Y, box.CentreX, box.CentreY)
                && ++between == MostSoft)
            {
                break;
            }
        }

        return between;
    }

    private static LabelBox Between(double x0, double y0, double x1, double y1) =>
        new(Math.Min(x0, x1), Math.Min(y0, y1), Math.Max(x0, x1), Math.Max(y0, y1));

    // A label almost as close to another mark as to its own would seem to be the other's: 1 for each mark at the same distance.
    private static double Ambiguity(LabelBox box, LabelRequest request, IReadOnlyList<LabelRequest> requests, BoxIndex marks)
    {
        double near = Math.Max(box.DistanceTo(request.X, request.Y), LeastDistance * request.Height);
        double sum = 0;
        foreach (int i in marks.Near(box.Grown(AmbiguousWithin * near)))
        {
            if (requests[i] != request)
            {
                double other = box.DistanceTo(marks[i].CentreX, marks[i].CentreY) / near;
                sum += Math.Clamp((AmbiguousWithin - other) / (AmbiguousWithin - 1), 0, 1);
                if (sum >= MostAmbiguity)
                {
                    return MostAmbiguity;
                }
            }
        }

        return sum;
    }
}

/// <summary>A label that needs a place near its mark.</summary>
/// <param name="X">The mark's centre, pixels from the left.</param>
/// <param name="Y">The mark's centre, pixels from the top.</param>
/// <param name="MarkRadius">Half the mark's size, pixels.</param>
/// <param name="Width">The label's width, pixels.</param>
/// <param name="Height">The label's height, pixels.</param>
internal sealed record LabelRequest(double X, double Y, double MarkRadius, double Width, double Height)
{
    /// <summary>The ground the mark itself takes.</summary>
    public LabelBox Mark => LabelBox.Around(X, Y, MarkRadius, MarkRadius);
}

/// <summary>The place of a label.</summary>
/// <param name="Box">Its place.</param>
/// <param name="HasLeader">Whether it is so far away that it needs a line to its mark.</param>
internal sealed record PlacedLabel(LabelBox Box, bool HasLeader);
