using System.Numerics;
using System.Runtime.Intrinsics;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// The stretch of a ray's front, in v, that the part of a footprint abreast of the ray takes up, and where the line enters and
/// leaves it on the plan, or comes closest: four sides at once, by the arithmetic of <see cref="PanelFront"/>. If an end of the
/// ray lies in a side itself, that class does it.
/// </summary>
internal readonly ref struct BoxSilhouette
{
    /// <summary>The right end, v.</summary>
    internal double Right { get; private init; }

    /// <summary>The left end, v.</summary>
    internal double Left { get; private init; }

    /// <summary>Where the line enters it, share of the ray's length.</summary>
    internal double Enter { get; private init; }

    /// <summary>Where it leaves it.</summary>
    internal double Leave { get; private init; }

    /// <summary>The silhouette of a footprint.</summary>
    internal static BoxSilhouette Of(FixtureBox box, in Ray ray, in Fold fold) =>
        TryOf(box, ray, fold, out BoxSilhouette silhouette) ? silhouette : SideBySide(box, ray, fold);

    /// <summary>The same a side at a time.</summary>
    internal static BoxSilhouette SideBySide(FixtureBox box, in Ray ray, in Fold fold)
    {
        Vector256<double> low = default, high = default, nearestAlong = default;
        uint sides = 0;
        for (int i = 0; i < box.Corners.Length; i++)
        {
            Point2 start = box.Corners[i], along = box.Corners[(i + 1) % box.Corners.Length] - start;
            var front = new PanelFront(in ray, in fold, new PlanPanel(start.X, start.Y, along.X, along.Y));
            if (front.First < front.Last)
            {
                front.TryBetween(front.First, front.At(front.First), front.Last, front.At(front.Last), out double right, out double left);
                low = low.WithElement(i, right);
                high = high.WithElement(i, left);
                nearestAlong = nearestAlong.WithElement(i, front.NearestAlong);
                sides |= 1u << i;
            }
        }

        return Round(low, high, nearestAlong, sides);
    }

    // All four sides at once; false where an end of the ray may touch one.
    private static bool TryOf(FixtureBox box, in Ray ray, in Fold fold, out BoxSilhouette silhouette)
    {
        var zero = Vector256<double>.Zero;
        var one = Vector256<double>.One;
        Vector256<double> least = Vector256.Create(ray.Least), greatest = Vector256.Create(ray.Greatest);
        Vector256<double> alongX = box.AlongX, alongY = box.AlongY;
        Vector256<double> east = box.CornersX - Vector256.Create(ray.From.X), north = box.CornersY - Vector256.Create(ray.From.Y);
        Vector256<double> tStart = ((east * ray.EastX) + (north * ray.NorthY)) / ray.PlanMetres;
        Vector256<double> leftStart = (ray.EastX * north) - (ray.NorthY * east);
        Vector256<double> abreast = (alongX * ray.EastX) + (alongY * ray.NorthY);
        Vector256<double> squared = (alongX * alongX) + (alongY * alongY);
        Vector256<double> isSquare = Vector256.LessThanOrEqual(
            abreast * abreast, GeometryTolerances.ParallelSine * GeometryTolerances.ParallelSine * squared);
        Vector256<double> tStep = Vector256.AndNot(abreast / ray.PlanMetres, isSquare);
        Vector256<double> leftStep = (ray.EastX * alongY) - (ray.NorthY * alongX);
        tStart -= leftStart / leftStep * abreast / ray.PlanMetres & isSquare;

        Vector256<double> before = (leftStart * tStep) - (tStart * leftStep), after = before + leftStep;
        Vector256<double> apart = Vector256.Min(Vector256.Abs(before), Vector256.Abs(after)) * ray.PlanMetres;
        if (Vector256.LessThanOrEqualAny(apart * apart, GeometryTolerances.SlackMetres * GeometryTolerances.SlackMetres * squared))
        {
            silhouette = default;
            return false; // it may touch
        }

        Vector256<double> sum = Vector256.Abs(before) + Vector256.Abs(after);
        Vector256<double> divided = Vector256.ConditionalSelect(
            Vector256.GreaterThan(sum, zero), Vector256.Abs(before) / sum, Vector256.Create(0.5));
        Vector256<double> t = Between(divided, least, greatest);
        if (!Vector256.EqualsAll(divided, t))
        {
            silhouette = default;
            return false; // crossed or closest where the zone has almost no width
        }

        // The part abreast of the ray and in front of the mirror; none of a side that the line runs along inside.
        Vector256<double> hasStep = ~Vector256.Equals(tStep, zero);
        Vector256<double> a = (least - tStart) / tStep, b = (greatest - tStart) / tStep;
        Vector256<double> endlessFrom = Vector256.ConditionalSelect(hasStep, Vector256.Min(a, b), Vector256.Create(double.NegativeInfinity));
        Vector256<double> endlessTo = Vector256.ConditionalSelect(hasStep, Vector256.Max(a, b), Vector256.Create(double.PositiveInfinity));
        Vector256<double> first = Vector256.Max(zero, endlessFrom), last = Vector256.Min(one, endlessTo);
        Vector256<double> isIn = hasStep | (Vector256.GreaterThanOrEqual(tStart, least) & Vector256.LessThanOrEqual(tStart, greatest));
        Vector256<double> farthest = Vector256.Max(Vector256.Abs(leftStart), Vector256.Abs(leftStart + leftStep));
        isIn &= Vector256.GreaterThan(farthest, Vector256.Create(GeometryTolerances.SlackMetres));
        isIn &= fold.Cut(box.CornersX, box.CornersY, alongX, alongY, ref first, ref last);
        isIn &= Vector256.LessThan(first, last);

        Vector256<double> nearest = (t - tStart) / tStep;
        Vector256<double> from = Between(tStart, least, greatest), to = Between(tStart + tStep, least, greatest);
        Vector256<double> nearestAlong = Between(t, Vector256.Min(from, to), Vector256.Max(from, to));

        var sides = new Sides(tStart, tStep, leftStart, leftStep, endlessFrom, endlessTo);
        Vector256<double> start = sides.At(first, ray), end = sides.At(last, ray), near = sides.At(nearest, ray);
        Vector256<double> hasNearest = ~(Vector256.GreaterThan(before, zero) ^ Vector256.GreaterThan(after, zero))
            & hasStep & Vector256.GreaterThan(nearest, first) & Vector256.LessThan(nearest, last);
        Vector256<double> low = Vector256.Min(start, end), high = Vector256.Max(start, end);
        low = Vector256.ConditionalSelect(hasNearest, Vector256.Min(low, near), low);
        high = Vector256.ConditionalSelect(hasNearest, Vector256.Max(high, near), high);
        silhouette = Round(low, high, nearestAlong, isIn.ExtractMostSignificantBits());
        return true;
    }

    // All sides together. A side that ends on the line counts as crossed, so rounding does not decide where the line runs along the next.
    private static BoxSilhouette Round(Vector256<double> low, Vector256<double> high, Vector256<double> nearestAlong, uint sides)
    {
        double right = double.PositiveInfinity, left = double.NegativeInfinity;
        double enter = double.PositiveInfinity, leave = double.NegativeInfinity;
        double nearest = double.PositiveInfinity, abreast = 0;
        for (; sides != 0; sides &= sides - 1)
        {
            int side = BitOperations.TrailingZeroCount(sides);
            right = Math.Min(right, low[side]);
            left = Math.Max(left, high[side]);
            double away = Math.Max(0, Math.Max(low[side], -high[side]));
            if (away < nearest)
            {
                nearest = away;
                abreast = nearestAlong[side];
            }

            if (low[side] <= FrontEdges.SameEdge && high[side] >= -FrontEdges.SameEdge)
            {
                enter = Math.Min(enter, nearestAlong[side]);
                leave = Math.Max(leave, nearestAlong[side]);
            }
        }

        bool isCrossed = enter <= leave;
        return new BoxSilhouette
        {
            Right = right,
            Left = left,
            Enter = isCrossed ? enter : abreast,
            Leave = isCrossed ? leave : abreast,
        };
    }

    private static Vector256<double> Between(Vector256<double> at, Vector256<double> least, Vector256<double> greatest) =>
        Vector256.Min(Vector256.Max(at, least), greatest);

    // Where places on the sides are relative to the ray.
    private readonly ref struct Sides(
        Vector256<double> tStart,
        Vector256<double> tStep,
        Vector256<double> leftStart,
        Vector256<double> leftStep,
        Vector256<double> endlessFrom,
        Vector256<double> endlessTo)
    {
        // Where on the front places on the sides are, v.
        internal Vector256<double> At(Vector256<double> u, in Ray ray)
        {
            Vector256<double> left = leftStart + (u * leftStep);
            Vector256<double> t = Between(tStart + (u * tStep), Vector256.Create(ray.Least), Vector256.Create(ray.Greatest));
            Vector256<double> radius = Vector256.Sqrt(ray.ZoneSquareMetres * t * (Vector256<double>.One - t));
            Vector256<double> isEndless = ~Vector256.Equals(left, Vector256<double>.Zero)
                & (Vector256.LessThanOrEqual(u, endlessFrom) | Vector256.GreaterThanOrEqual(u, endlessTo));
            return Vector256.ConditionalSelect(isEndless, left * double.PositiveInfinity, Math.Sqrt(2) * left / radius);
        }
    }
}
