using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// An upright panel in a ray's wave front: the stretch of the front that it takes up, the part of its length that counts, and its
/// heights on the front.
/// </summary>
internal readonly ref struct PanelFront
{
    private readonly ref readonly Ray ray;
    private readonly double tStart;
    private readonly double tStep;
    private readonly double leftStart;
    private readonly double leftStep;
    private readonly double endlessFrom; // shares of the panel up to which and from which it is
    private readonly double endlessTo; // beyond the ray's ends
    private readonly double touchFrom; // share of the panel at which it touches the ray's start; NaN for nowhere
    private readonly double touchTo; // and its end
    private readonly double touchSlack; // the slack as a share of the panel's length
    private readonly double nearest; // share of the panel where the line comes closest to it without crossing; NaN for none

    /// <summary>Measures a panel.</summary>
    /// <param name="ray">The ray.</param>
    /// <param name="fold">Where it is reflected.</param>
    /// <param name="panel">The panel on the plan.</param>
    internal PanelFront(ref readonly Ray ray, in Fold fold, in PlanPanel panel)
    {
        this.ray = ref ray;
        tStart = ray.Abreast(panel.StartX, panel.StartY);
        leftStart = ray.LeftOf(panel.StartX, panel.StartY);
        leftStep = (ray.EastX * panel.AlongY) - (ray.NorthY * panel.AlongX);
        double abreast = (panel.AlongX * ray.EastX) + (panel.AlongY * ray.NorthY), squared = panel.SquaredMetres;
        bool isSquare = abreast * abreast <= GeometryTolerances.ParallelSine * GeometryTolerances.ParallelSine * squared; // perpendicular to the line
        tStep = isSquare ? 0 : abreast / ray.PlanMetres;
        tStart -= isSquare ? leftStart / leftStep * abreast / ray.PlanMetres : 0; // where the line crosses its plane, whichever end it is drawn from
        nearest = double.NaN;

        // How far the panel's plane is from both ends of the ray, up to a common factor. If the line crosses the plane, the crossing
        // divides the ray in their ratio; if not, v = (a + (b − a)·t)/√(t(1 − t)) is least there, at t = a/(a + b).
        double before = (leftStart * tStep) - (tStart * leftStep), after = before + leftStep;
        if (Math.Max(Math.Abs(leftStart), Math.Abs(leftStart + leftStep)) <= GeometryTolerances.SlackMetres
            || (IsInPlane(before, squared) && IsInPlane(after, squared)))
        {
            // The line runs inside the panel: it does not cross it, by the same rule as for the straight line alone. For an almost
            // vertical line a hair at its ends decides how far away the panel's ends are and where it crosses the plane; so the line's
            // own ends are tested.
            Last = -1;
            if (!panel.TakesIn)
            {
                return;
            }

            // An end in the middle of a wall: a line that leaves it to either side by a hair passes all of the wall.
            (endlessFrom, endlessTo, touchSlack) = (0, 1, GeometryTolerances.SlackMetres / Math.Sqrt(squared));
            (touchFrom, touchTo) = (TouchAt(0, 0, squared), TouchAt(1, 0, squared));
            (double inFirst, double inLast) = (0, 1);
            fold.Cut(panel.StartX, panel.StartY, panel.AlongX, panel.AlongY, ref inFirst, ref inLast);
            if (inFirst < inLast && IsTouched(inFirst, inLast))
            {
                (First, Last, IsMet) = (inFirst, inLast, true);
                NearestAlong = double.IsNaN(touchFrom) ? ray.Greatest : double.IsNaN(touchTo) ? ray.Least : 0.5;
                Heights = FrontHeights.OfWall(in ray, NearestAlong, double.PositiveInfinity, NearestAlong, NearestAlong);
            }

            return;
        }

        (endlessFrom, endlessTo) = AbreastPart();
        double sum = Math.Abs(before) + Math.Abs(after), divided = sum > 0 ? Math.Abs(before) / sum : 0.5, t = Clamped(divided);
        bool isCrossed = before > 0 != after > 0, hasWidth = divided == t;

        // If an end of the ray lies in the panel itself, the panel takes up the whole front, as for the straight line alone; so too if
        // the line crosses it where the zone has almost no width.
        touchSlack = GeometryTolerances.SlackMetres / Math.Sqrt(squared);
        double crossedAt = isCrossed && !hasWidth ? OnPanel(-leftStart / leftStep) : double.NaN;
        touchFrom = divided < t && !double.IsNaN(crossedAt) ? crossedAt : TouchAt(0, before, squared);
        touchTo = divided > t && !double.IsNaN(crossedAt) ? crossedAt : TouchAt(1, after, squared);
        bool isTouched = IsTouched(0, 1);
        bool isAbreast = tStep != 0 || !(tStart < ray.Least || tStart > ray.Greatest);
        (double first, double last) = isTouched ? (0, 1) : isAbreast ? (Math.Max(0, endlessFrom), Math.Min(1, endlessTo)) : (0, -1);
        fold.Cut(panel.StartX, panel.StartY, panel.AlongX, panel.AlongY, ref first, ref last);
        First = first;
        Last = last;
        if (!(first < last))
        {
            return;
        }

        // Heights are measured at t, or at the end of the run nearest to it: a wall in two parts is one wall.
        double one = Clamped(tStart + (panel.RunFrom * tStep)), other = Clamped(tStart + (panel.RunTo * tStep));
        (double runFrom, double runTo) = one < other ? (one, other) : (other, one);
        NearestAlong = Math.Clamp(t, runFrom, runTo);
        if (!(isCrossed && hasWidth) && tStep != 0)
        {
            // A crossing where the zone has no width does not count: if a panel stops short of an end of the ray that lies in its plane,
            // rounding alone decides on which side of the plane that end is.
            nearest = (t - tStart) / tStep;
        }

        if (!isTouched && IsOutOfReach(first, last))
        {
            return;
        }

        Heights = FrontHeights.OfWall(in ray, NearestAlong, leftStep / tStep, runFrom, runTo);
        AtFirst = At(first);
        AtLast = At(last);
        IsMet = TryBetween(first, AtFirst, last, AtLast, out _, out _);
    }

    /// <summary>One of several that were measured at once and found within reach; neither end of the ray lies in it.</summary>
    /// <param name="ray">The ray.</param>
    /// <param name="rows">Their numbers (<see cref="PanelLanes.Row"/>).</param>
    /// <param name="lane">Which of them.</param>
    internal PanelFront(ref readonly Ray ray, ReadOnlySpan<double> rows, int lane)
    {
        this.ray = ref ray;
        ref double first = ref MemoryMarshal.GetReference(rows[lane..(lane + PanelLanes.Room - PlanPanels.Lanes + 1)]);
        tStart = Unsafe.Add(ref first, PanelLanes.Row.TStart * PlanPanels.Lanes);
        tStep = Unsafe.Add(ref first, PanelLanes.Row.TStep * PlanPanels.Lanes);
        leftStart = Unsafe.Add(ref first, PanelLanes.Row.LeftStart * PlanPanels.Lanes);
        leftStep = Unsafe.Add(ref first, PanelLanes.Row.LeftStep * PlanPanels.Lanes);
        endlessFrom = Unsafe.Add(ref first, PanelLanes.Row.EndlessFrom * PlanPanels.Lanes);
        endlessTo = Unsafe.Add(ref first, PanelLanes.Row.EndlessTo * PlanPanels.Lanes);
        nearest = Unsafe.Add(ref first, PanelLanes.Row.Nearest * PlanPanels.Lanes);
        First = Unsafe.Add(ref first, PanelLanes.Row.First * PlanPanels.Lanes);
        Last = Unsafe.Add(ref first, PanelLanes.Row.Last * PlanPanels.Lanes);
        AtFirst = Unsafe.Add(ref first, PanelLanes.Row.AtFirst * PlanPanels.Lanes);
        AtLast = Unsafe.Add(ref first, PanelLanes.Row.AtLast * PlanPanels.Lanes);
        NearestAlong = Unsafe.Add(ref first, PanelLanes.Row.NearestAlong * PlanPanels.Lanes);
        touchFrom = touchTo = double.NaN;
        Heights = FrontHeights.OfWall(
            in ray,
            NearestAlong,
            leftStep / tStep,
            Unsafe.Add(ref first, PanelLanes.Row.RunFrom * PlanPanels.Lanes),
            Unsafe.Add(ref first, PanelLanes.Row.RunTo * PlanPanels.Lanes));
        IsMet = true;
    }

    /// <summary>Whether any of it stands within reach of the line.</summary>
    internal bool IsMet { get; }

    /// <summary>Where the part abreast of the ray starts, share of the panel's length.</summary>
    internal double First { get; }

    /// <summary>Where it ends.</summary>
    internal double Last { get; }

    /// <summary>Where on the front the part abreast of the ray starts, v.</summary>
    internal double AtFirst { get; }

    /// <summary>Where it ends.</summary>
    internal double AtLast { get; }

    /// <summary>Where along the ray its plane is crossed or nearest, share of the ray's length.</summary>
    internal double NearestAlong { get; }

    /// <summary>Its heights on the front.</summary>
    internal FrontHeights Heights { get; }

    /// <summary>The stretch of the front that a part of the panel takes up, v; false where it is out of reach.</summary>
    /// <param name="from">Where the part starts, share of the panel's length.</param>
    /// <param name="start">Where on the front that is, v.</param>
    /// <param name="to">Where it ends.</param>
    /// <param name="end">Where on the front that is.</param>
    /// <param name="low">The right end of the stretch.</param>
    /// <param name="high">The left end.</param>
    internal bool TryBetween(double from, double start, double to, double end, out double low, out double high)
    {
        if (IsTouched(from, to))
        {
            (low, high) = (double.NegativeInfinity, double.PositiveInfinity);
            return true;
        }

        (low, high) = start < end ? (start, end) : (end, start);
        if (nearest >= from && nearest <= to)
        {
            double near = AtAbreast(nearest);
            low = Math.Min(low, near);
            high = Math.Max(high, near);
        }

        return low < ray.Reach.End && high > -ray.Reach.End;
    }

    /// <summary>
    /// Cosine of the angle at which the wave strikes the panel. Where the line crosses its straight run that is the line's own angle. What passes
    /// through a run beside the line is bent: it leaves the line at the angle h/(t·length) and returns at h/((1 − t)·length), with the distance h of
    /// the run's nearest place t. Through a wall parallel to the line nothing else gets.
    /// </summary>
    /// <param name="cosine">That of the line.</param>
    /// <param name="panel">The panel.</param>
    internal double CosIncidence(double cosine, in PlanPanel panel)
    {
        if (tStep == 0)
        {
            return cosine; // perpendicular to the line
        }

        double t = NearestAlong, u = Math.Clamp((t - tStart) / tStep, panel.RunFrom, panel.RunTo), aside = leftStart + (u * leftStep);
        double sine = aside / (2 * ray.PlanMetres * t * (1 - t)); // the mean of both angles
        return Math.Sqrt(Math.Min(1, (cosine * cosine) + ((1 - (cosine * cosine)) * sine * sine)));
    }

    /// <summary>Where on the front a place on the panel is, v.</summary>
    internal double At(double u)
    {
        double left = leftStart + (u * leftStep);
        return left != 0 && (u <= endlessFrom || u >= endlessTo)
            ? left * double.PositiveInfinity
            : AtAbreast(u);
    }

    // The same of a place abreast of the ray.
    private double AtAbreast(double u) =>
        Math.Sqrt(2) * (leftStart + (u * leftStep)) / ray.RadiusAt(Clamped(tStart + (u * tStep)));

    // The shares of the panel between which it is abreast of the ray: only that part obstructs it. Where that ends at an end of the
    // ray, the zone has no width, and a panel that continues beyond takes up the front to infinity.
    private (double From, double To) AbreastPart()
    {
        if (tStep == 0)
        {
            return (double.NegativeInfinity, double.PositiveInfinity); // all of it or none
        }

        double a = (ray.Least - tStart) / tStep, b = (ray.Greatest - tStart) / tStep;
        return a < b ? (a, b) : (b, a);
    }

    // The share of the panel at which it touches the ray at t; NaN for nowhere.
    private double TouchAt(double t, double away, double squared)
    {
        if (!IsInPlane(away, squared))
        {
            return double.NaN;
        }

        double length = ray.PlanMetres;
        double u = (((t - tStart) * tStep * length * length) - (leftStart * leftStep)) / squared;
        return OnPanel(u);
    }

    // Whether an end of the ray lies in the panel's plane.
    private bool IsInPlane(double away, double squared)
    {
        double apart = away * ray.PlanMetres;
        return apart * apart <= GeometryTolerances.SlackMetres * GeometryTolerances.SlackMetres * squared;
    }

    // A share of the panel's length, if it is on the panel; NaN where it is not.
    private double OnPanel(double u) => u >= -touchSlack && u <= 1 + touchSlack ? Math.Clamp(u, 0, 1) : double.NaN;

    // Whether it is all on one side of the line, and farther from it than the front reaches at its widest abreast of the panel.
    private bool IsOutOfReach(double from, double to)
    {
        double one = leftStart + (from * leftStep), other = leftStart + (to * leftStep);
        return one > 0 == other > 0
            && ray.IsOutOfReach(Math.Min(Math.Abs(one), Math.Abs(other)), tStart + (from * tStep), tStart + (to * tStep));
    }

    // At a jamb both the wall and what fills the opening are touched, as for the straight line alone.
    private bool IsTouched(double from, double to) =>
        (touchFrom >= from - touchSlack && touchFrom <= to + touchSlack)
        || (touchTo >= from - touchSlack && touchTo <= to + touchSlack);

    private double Clamped(double t) => Math.Clamp(t, ray.Least, ray.Greatest);
}

/// <summary>An upright panel on the plan.</summary>
/// <param name="StartX">One end.</param>
/// <param name="StartY">One end.</param>
/// <param name="AlongX">From there to the other end.</param>
/// <param name="AlongY">From there to the other end.</param>
/// <param name="RunFrom">Where the straight run it is part of starts, share of the panel's length.</param>
/// <param name="RunTo">Where that ends.</param>
/// <param name="TakesIn">Whether an end of a ray may be in it: in the middle of a wall.</param>
internal readonly record struct PlanPanel(
    double StartX, double StartY, double AlongX, double AlongY, double RunFrom = 0, double RunTo = 1, bool TakesIn = false)
{
    /// <summary>Square of its length, square metres.</summary>
    internal double SquaredMetres => (AlongX * AlongX) + (AlongY * AlongY);
}
