using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// Eight upright panels in a ray's wave front at once, by the arithmetic of <see cref="PanelFront"/>. Where an end of the ray may lie in a panel
/// itself, or where the zone has almost no width, that class does it.
/// </summary>
internal readonly ref struct PanelLanes
{
    private readonly ref readonly Ray ray;
    private readonly Span<double> rows; // of each number, one for each lane

    /// <summary>Measures a group of panels.</summary>
    /// <param name="ray">The ray.</param>
    /// <param name="fold">Where it is reflected.</param>
    /// <param name="panels">The panels.</param>
    /// <param name="group">Which of them.</param>
    /// <param name="wanted">Those to be measured, a bit each.</param>
    /// <param name="rows">Room for <see cref="Room"/> numbers.</param>
    internal PanelLanes(ref readonly Ray ray, in Fold fold, PlanPanels panels, int group, uint wanted, Span<double> rows)
    {
        this.ray = ref ray;
        this.rows = rows;
        Vector512<double> zero = Vector512<double>.Zero, one = Vector512<double>.One;
        Vector512<double> least = Vector512.Create(ray.Least), greatest = Vector512.Create(ray.Greatest), end = Vector512.Create(ray.Reach.End);
        Vector512<double> startX = PlanPanels.Group(panels.StartX, group), startY = PlanPanels.Group(panels.StartY, group);
        Vector512<double> alongX = PlanPanels.Group(panels.AlongX, group), alongY = PlanPanels.Group(panels.AlongY, group);
        double plan = ray.PlanMetres, eachMetre = 1 / plan;
        Vector512<double> east = startX - Vector512.Create(ray.From.X), north = startY - Vector512.Create(ray.From.Y);
        Vector512<double> tStart = ((east * ray.EastX) + (north * ray.NorthY)) * eachMetre, leftStart = (ray.EastX * north) - (ray.NorthY * east);
        Vector512<double> leftStep = (ray.EastX * alongY) - (ray.NorthY * alongX), abreast = (alongX * ray.EastX) + (alongY * ray.NorthY);
        Vector512<double> squared = (alongX * alongX) + (alongY * alongY);
        Vector512<double> isSquare = Vector512.LessThanOrEqual(abreast * abreast, GeometryTolerances.ParallelSine * GeometryTolerances.ParallelSine * squared);
        Vector512<double> tStep = Vector512.AndNot(abreast * eachMetre, isSquare);
        if (isSquare != zero)
        {
            tStart -= leftStart / leftStep * abreast * eachMetre & isSquare;
        }

        // Of a panel in which the line runs nothing is met; where an end of the line may lie in it, or the zone has no width there, it is left to be
        // measured by itself.
        Vector512<double> before = (leftStart * tStep) - (tStart * leftStep), after = before + leftStep;
        Vector512<double> apart = Vector512.Min(Vector512.Abs(before), Vector512.Abs(after)) * plan;
        Vector512<double> isTouched = Vector512.LessThanOrEqual(apart * apart, GeometryTolerances.SlackMetres * GeometryTolerances.SlackMetres * squared);
        Vector512<double> divided = Vector512.Abs(before) / (Vector512.Abs(before) + Vector512.Abs(after)), t = Between(divided, least, greatest);
        uint single = Bits(isTouched | ~Vector512.Equals(divided, t)) & wanted;
        Vector512<double> isMet = Vector512.GreaterThan(
            Vector512.Max(Vector512.Abs(leftStart), Vector512.Abs(leftStart + leftStep)), Vector512.Create(GeometryTolerances.SlackMetres));

        // The part abreast of the ray and in front of the mirror.
        Vector512<double> hasStep = ~Vector512.Equals(tStep, zero), perStep = one / tStep;
        Vector512<double> a = (least - tStart) * perStep, b = (greatest - tStart) * perStep;
        Vector512<double> endlessFrom = Vector512.ConditionalSelect(hasStep, Vector512.Min(a, b), Vector512.Create(double.NegativeInfinity));
        Vector512<double> endlessTo = Vector512.ConditionalSelect(hasStep, Vector512.Max(a, b), Vector512.Create(double.PositiveInfinity));
        Vector512<double> first = Vector512.Max(zero, endlessFrom), last = Vector512.Min(one, endlessTo);
        isMet &= hasStep | (Vector512.GreaterThanOrEqual(tStart, least) & Vector512.LessThanOrEqual(tStart, greatest));
        isMet &= fold.Cut(startX, startY, alongX, alongY, ref first, ref last);
        isMet &= Vector512.LessThan(first, last);

        var places = new Places(tStart, tStep, leftStart, leftStep, endlessFrom, endlessTo);
        Vector512<double> atFirst = places.At(first, ray), atLast = places.At(last, ray);
        Vector512<double> low = Vector512.Min(atFirst, atLast), high = Vector512.Max(atFirst, atLast);

        // Where the line comes closest to a panel that it does not cross.
        Vector512<double> isCrossed = Vector512.GreaterThan(before, zero) ^ Vector512.GreaterThan(after, zero);
        Vector512<double> hasNearest = Vector512.AndNot(hasStep, isCrossed), nearest = (t - tStart) * perStep;
        Vector512<double> isBetween = hasNearest & Vector512.GreaterThanOrEqual(nearest, first) & Vector512.LessThanOrEqual(nearest, last);
        if ((Bits(isBetween) & wanted) != 0)
        {
            Vector512<double> near = places.At(nearest, ray);
            low = Vector512.ConditionalSelect(isBetween, Vector512.Min(low, near), low);
            high = Vector512.ConditionalSelect(isBetween, Vector512.Max(high, near), high);
        }

        isMet &= Vector512.LessThan(low, end) & Vector512.GreaterThan(high, -end);
        Single = single;
        Met = Bits(isMet) & wanted & ~single;
        if (Met == 0)
        {
            return;
        }

        // Heights and angle are measured at t, or at the end of the run nearest to it.
        Vector512<double> runFrom = PlanPanels.Group(panels.RunFrom, group), runTo = PlanPanels.Group(panels.RunTo, group);
        Vector512<double> from = Between(tStart + (runFrom * tStep), least, greatest), to = Between(tStart + (runTo * tStep), least, greatest);
        (from, to) = (Vector512.Min(from, to), Vector512.Max(from, to));
        Vector512<double> nearestAlong = Between(t, from, to), spread = nearestAlong * (one - nearestAlong);
        Vector512<double> cosine = Vector512.Min(one, Vector512.Abs(leftStep) * ray.CosSlope * PlanPanels.Group(panels.EachMetre, group));
        Vector512<double> aside = leftStart + (Between((nearestAlong - tStart) * perStep, runFrom, runTo) * leftStep), cosineSquared = cosine * cosine;
        Vector512<double> sine = aside * (0.5 * eachMetre) / spread;
        Vector512<double> bent = Vector512.Sqrt(Vector512.Min(one, cosineSquared + ((one - cosineSquared) * sine * sine)));
        cosine = Vector512.ConditionalSelect(hasStep, bent, cosine);

        Store(Row.TStart, tStart);
        Store(Row.TStep, tStep);
        Store(Row.LeftStart, leftStart);
        Store(Row.LeftStep, leftStep);
        Store(Row.EndlessFrom, endlessFrom);
        Store(Row.EndlessTo, endlessTo);
        Store(Row.Nearest, Vector512.ConditionalSelect(hasNearest, nearest, Vector512.Create(double.NaN)));
        Store(Row.First, first);
        Store(Row.Last, last);
        Store(Row.AtFirst, atFirst);
        Store(Row.AtLast, atLast);
        Store(Row.NearestAlong, nearestAlong);
        Store(Row.Cosine, cosine);
        Store(Row.RunFrom, from);
        Store(Row.RunTo, to);
    }

    /// <summary>How many numbers it needs room for.</summary>
    internal const int Room = Row.Count * PlanPanels.Lanes;

    /// <summary>Those of which some stands within reach of the line, a bit each.</summary>
    internal uint Met { get; }

    /// <summary>Those that must be measured each by itself, a bit each.</summary>
    internal uint Single { get; }

    /// <summary>One of those that are met.</summary>
    internal PanelFront this[int lane] => new(in ray, rows, lane);

    /// <summary>Cosine of the angle at which the wave strikes one of those that are met (<see cref="PanelFront.CosIncidence"/>).</summary>
    internal double CosIncidence(int lane) => rows[(Row.Cosine * PlanPanels.Lanes) + lane];

    private void Store(int row, Vector512<double> numbers) => numbers.StoreUnsafe(ref rows[row * PlanPanels.Lanes]);

    private static uint Bits(Vector512<double> mask) => (uint)mask.ExtractMostSignificantBits();

    private static Vector512<double> Between(Vector512<double> at, Vector512<double> least, Vector512<double> greatest) =>
        Vector512.Min(Vector512.Max(at, least), greatest);

    /// <summary>The numbers of a panel, a row each.</summary>
    internal static class Row
    {
        internal const int TStart = 0;
        internal const int TStep = 1;
        internal const int LeftStart = 2;
        internal const int LeftStep = 3;
        internal const int EndlessFrom = 4;
        internal const int EndlessTo = 5;
        internal const int Nearest = 6;
        internal const int First = 7;
        internal const int Last = 8;
        internal const int AtFirst = 9;
        internal const int AtLast = 10;
        internal const int NearestAlong = 11;
        internal const int Cosine = 12;
        internal const int RunFrom = 13;
        internal const int RunTo = 14;
        internal const int Count = 15;
    }

    // Where places on the panels are relative to the ray.
    private readonly ref struct Places(
        Vector512<double> tStart,
        Vector512<double> tStep,
        Vector512<double> leftStart,
        Vector512<double> leftStep,
        Vector512<double> endlessFrom,
        Vector512<double> endlessTo)
    {
        // Where on the front places on the panels are, v.
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        internal Vector512<double> At(Vector512<double> u, in Ray ray)
        {
            Vector512<double> left = leftStart + (u * leftStep);
            Vector512<double> t = Between(tStart + (u * tStep), Vector512.Create(ray.Least), Vector512.Create(ray.Greatest));
            Vector512<double> radius = Vector512.Sqrt(ray.ZoneSquareMetres * t * (Vector512<double>.One - t));
            Vector512<double> isEndless = ~Vector512.Equals(left, Vector512<double>.Zero)
                & (Vector512.LessThanOrEqual(u, endlessFrom) | Vector512.GreaterThanOrEqual(u, endlessTo));
            return Vector512.ConditionalSelect(isEndless, left * double.PositiveInfinity, Math.Sqrt(2) * left / radius);
        }
    }
}
