using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>Where a leg of a path leaves a shell that exactly one of its ends is inside.</summary>
/// <param name="From">That end.</param>
/// <param name="Side">The side it leaves by, or comes in by.</param>
/// <param name="Onwards">Its direction on the plan, of unit length; zero where it runs straight up or down.</param>
internal readonly record struct Outlet(Point3 From, BoxSides Side, Point2 Onwards)
{
    /// <summary>Whether it leaves by lid or underside.</summary>
    internal bool IsLevel => (Side & ~(BoxSides.Top | BoxSides.Bottom)) == 0;

    /// <summary>The height of that lid or underside above the lowest floor, metres.</summary>
    internal double HeightMetres(FixtureBox box) => (Side & BoxSides.Top) != 0 ? box.VerticalExtent.High : box.VerticalExtent.Low;

    /// <summary>Distance on the plan from the end inside to an upright side: along the leg, or the shortest if the leg misses it, metres.</summary>
    internal double PlanMetresTo(FixtureBox box, int side)
    {
        Point2 normal = box.OutwardOf(side);
        double depth = Math.Max(0, box.DepthBehind(side, From.Plan));
        return (Side & FixtureBox.PanelSides[side]) != 0 && Point2.Dot(Onwards, normal) is var towards and > 0 ? depth / towards : depth;
    }

    /// <summary>Where a straight line, or one leg of a folded one, leaves the shell; null where both its ends are inside, or neither.</summary>
    internal static Outlet? Of(FixtureBox box, in Ray leg) => Of(box, leg.From, leg.To, leg.Start, leg.End);

    /// <summary>The same for the part of a line between two shares of its length.</summary>
    internal static Outlet? Of(FixtureBox box, Point3 from, Point3 to, double start, double end)
    {
        if (!box.IsShell || !box.Pierce(from, to, out BoxPassage passage))
        {
            return null;
        }

        double slack = GeometryTolerances.SlackMetres / from.DistanceTo(to);
        bool startsIn = passage.Enter <= start + slack, endsIn = passage.Leave >= end - slack;
        if (startsIn == endsIn || Math.Min(passage.Leave, end) - Math.Max(passage.Enter, start) <= slack)
        {
            return null;
        }

        Point2 along = startsIn ? to.Plan - from.Plan : from.Plan - to.Plan;
        double length = Math.Sqrt(Point2.Dot(along, along));
        return new Outlet(
            from.Towards(to, startsIn ? start : end),
            startsIn ? passage.LeaveSide : passage.EnterSide,
            length > GeometryTolerances.SlackMetres ? (1 / length) * along : new Point2(0, 0));
    }
}

/// <summary>
/// Where the legs of a path leave a shell; if a floor or ceiling reflects the path, the ray stands for both legs. Both legs leave the
/// shell if the point of reflection is inside.
/// </summary>
internal readonly ref struct FoldedOutlets
{
    private readonly Outlet? there; // of the first leg; of the other leg too where that has none
    private readonly Outlet? on;
    private readonly double foldedAt; // share of the ray's length

    private FoldedOutlets(Outlet? there, Outlet? on, double foldedAt)
    {
        this.there = there ?? on;
        this.on = on ?? there;
        this.foldedAt = foldedAt;
    }

    /// <summary>Whether neither leg has one end inside and one outside.</summary>
    internal bool AreNone => there is null;

    /// <summary>Whether every leg that leaves does so by lid or underside.</summary>
    internal bool AreLevel => there is { IsLevel: true } && on is { IsLevel: true };

    /// <summary>The outlets of a shell.</summary>
    internal static FoldedOutlets Of(FixtureBox box, in Ray ray, in Fold fold)
    {
        if (!fold.IsLevel)
        {
            return new FoldedOutlets(Outlet.Of(box, ray) ?? OfOtherLeg(box, ray, fold), null, 0);
        }

        Point3 start = ray.From.Plan.At(fold.Image(ray.From.Z)), imageOfEnd = ray.To.Plan.At(fold.Image(ray.To.Z));
        return new FoldedOutlets(
            Outlet.Of(box, start, imageOfEnd, 0, ray.Start), Outlet.Of(box, ray.From, ray.To, ray.Start, 1), ray.Start);
    }

    // If a side of the shell reflects the path inside it, one leg lies in the shell: its front continues in the image of the shell, which
    // it leaves where the other leg does.
    private static Outlet? OfOtherLeg(FixtureBox box, in Ray leg, in Fold fold)
    {
        if (fold.Mirror < 0 || !box.HasMirror(fold.Mirror))
        {
            return null;
        }

        (double mirror, Point3 image) = leg.End < 1 ? (leg.End, leg.To) : (leg.Start, leg.From);
        return Outlet.Of(box, leg.PointAt(mirror), fold.Image(image), 0, 1);
    }

    /// <summary>The outlet of the leg that a share of the ray's length belongs to.</summary>
    internal Outlet? At(double along) => along < foldedAt ? there : on;
}
