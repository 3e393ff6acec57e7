using LinkMargin.Engine.Propagation;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// An upright panel as a ray's wave front meets it: which stretch of the front, between which shares of the panel's length, and
/// how its heights measure on the front.
/// </summary>
internal readonly ref struct PanelFront
{
    private readonly ref readonly Ray ray;
    private readonly double tStart;
    private readonly double tStep;
    private readonly double leftStart;
    private readonly double leftStep;
    private readonly double endlessFrom = double.NegativeInfinity; // shares of the panel up to which and from which it is
    private readonly double endlessTo = double.PositiveInfinity; // beyond the ray's ends
    private readonly double touchFrom; // share of the panel at which it touches the ray's start; NaN for nowhere
    private readonly double touchTo; // and its end
    private readonly double touchSlack; // share of the panel's length that is within a hair
    private readonly double nearest; // share of the panel where the line comes nearest to it without crossing; NaN for none

    /// <summary>Looks at a panel from one plan point to another.</summary>
    /// <param name="ray">The ray.</param>
    /// <param name="fold">Where it is thrown back.</param>
    /// <param name="startX">One end of the panel.</param>
    /// <param name="startY">One end of the panel.</param>
    /// <param name="alongX">From there to the other end.</param>
    /// <param name="alongY">From there to the other end.</param>
    /// <param name="runFrom">Where the straight run it is part of starts, share of the panel's length.</param>
    /// <param name="runTo">Where that ends.</param>
    internal PanelFront(
        ref readonly Ray ray,
        in Fold fold,
        double startX,
        double startY,
        double alongX,
        double alongY,
        double runFrom = 0,
        double runTo = 1)
    {
        this.ray = ref ray;
        tStart = ray.Abreast(startX, startY);
        leftStart = ray.LeftOf(startX, startY);
        double abreast = (alongX * ray.EastX) + (alongY * ray.NorthY), squared = (alongX * alongX) + (alongY * alongY);
        bool isSquare = abreast * abreast <= Touching.ParallelSine * Touching.ParallelSine * squared; // square to the line
        tStep = isSquare ? 0 : abreast / ray.PlanMetres;
        leftStep = (ray.EastX * alongY) - (ray.NorthY * alongX);
        if (isSquare)
        {
            tStart -= leftStart / leftStep * abreast / ray.PlanMetres; // where the line crosses its plane, whichever end it is drawn from
        }

        if (Math.Max(Math.Abs(leftStart), Math.Abs(leftStart + leftStep)) <= Touching.SlackMetres)
        {
            Last = -1; // the line runs along inside it: like the straight line's own rule, it is not crossed
            return;
        }

        // Only the part abreast of the ray stands in its way. Where that ends at an end of the ray the zone has no width any
        // more, and what goes on beyond it takes up the front without end.
        double first = 0, last = 1;
        if (tStep != 0)
        {
            double a = (ray.Least - tStart) / tStep, b = (ray.Greatest - tStart) / tStep;
            (a, b) = a < b ? (a, b) : (b, a);
            first = Math.Max(first, a);
            last = Math.Min(last, b);
            endlessFrom = a;
            endlessTo = b;
        }
        else if (tStart < ray.Least || tStart > ray.Greatest)
        {
            last = -1;
        }

        // How far the panel's plane is from both ends of the ray, up to one factor. Where the line crosses the plane it divides
        // the ray as these two; where it does not, v is least there: of (a + (b − a)·t)/√(t(1 − t)) at t = a/(a + b).
        double before = (leftStart * tStep) - (tStart * leftStep), after = before + leftStep;

        // An end of the ray in the panel itself has all of it in its way, as for the straight line alone.
        touchSlack = Touching.SlackMetres / Math.Sqrt(squared);
        touchFrom = TouchAt(0, before, squared);
        touchTo = TouchAt(1, after, squared);
        double sum = Math.Abs(before) + Math.Abs(after), divided = sum > 0 ? Math.Abs(before) / sum : 0.5, t = Clamped(divided);
        bool isCrossed = before > 0 != after > 0, hasWidth = divided == t;
        if (isCrossed && !hasWidth)
        {
            // Crossed where the zone has no width to speak of: the same.
            double u = -leftStart / leftStep;
            bool isOnPanel = u >= -touchSlack && u <= 1 + touchSlack;
            touchFrom = isOnPanel && divided < t ? Math.Clamp(u, 0, 1) : touchFrom;
            touchTo = isOnPanel && divided > t ? Math.Clamp(u, 0, 1) : touchTo;
        }

        bool isTouched = IsTouched(0, 1);
        (first, last) = isTouched ? (0, 1) : (first, last);
        fold.Cut(startX, startY, alongX, alongY, ref first, ref last);
        First = first;
        Last = last;
        nearest = double.NaN;
        if (!(first < last))
        {
            return;
        }

        // Heights are looked at there, or at the end of the run nearest to it: a wall in two parts is one wall.
        double from = Clamped(tStart + (runFrom * tStep)), to = Clamped(tStart + (runTo * tStep));
        NearestAlong = Math.Clamp(t, Math.Min(from, to), Math.Max(from, to));
        if (!(isCrossed && hasWidth) && tStep != 0)
        {
            // Crossed where the zone has no width does not count: if a panel stops short of an end of the ray that lies in its plane,
            // rounding alone decides on which side of the plane that end is.
            nearest = (t - tStart) / tStep;
        }

        if (!isTouched && IsOutOfReach(first, last))
        {
            return;
        }

        Heights = FrontHeights.At(in ray, NearestAlong);
        AtFirst = At(first);
        AtLast = At(last);
        IsMet = TryBetween(first, AtFirst, last, AtLast, out _, out _);
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

    /// <summary>How its heights measure on the front.</summary>
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

        return low < EdgeKernel.Reach && high > -EdgeKernel.Reach;
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

    // The share of the panel at which it touches the ray at t; NaN for nowhere.
    private double TouchAt(double t, double away, double squared)
    {
        double length = ray.PlanMetres, apart = away * length;
        if (!(apart * apart <= Touching.SlackMetres * Touching.SlackMetres * squared))
        {
            return double.NaN;
        }

        double u = (((t - tStart) * tStep * length * length) - (leftStart * leftStep)) / squared;
        return u >= -touchSlack && u <= 1 + touchSlack ? Math.Clamp(u, 0, 1) : double.NaN;
    }

    // All on one side of the line, and farther from it than the front reaches where it is widest abreast of the panel.
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
