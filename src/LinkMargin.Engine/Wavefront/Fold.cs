using System.Runtime.Intrinsics;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// The mirror that reflects a path. Unfolded, the path runs straight through it, past the obstacles in front of the mirror and
/// then past their images; obstacles behind it affect no leg, and an obstacle that touches it continues without a gap in its
/// own image.
/// </summary>
internal readonly struct Fold
{
    private readonly double normalX;
    private readonly double normalY;
    private readonly double offset;
    private readonly bool facesUp;

    private Fold(double normalX, double normalY, double offset, double height, bool facesUp, int mirror)
    {
        this.normalX = normalX;
        this.normalY = normalY;
        this.offset = offset;
        this.facesUp = facesUp;
        Height = height;
        Mirror = mirror;
    }

    /// <summary>No mirror: a path that is not reflected.</summary>
    internal static Fold None { get; } = new(0, 0, 0, double.NaN, false, -1);

    /// <summary>The upright mirror's number; −1 for none.</summary>
    internal int Mirror { get; }

    /// <summary>Height of a level mirror, metres; NaN for none.</summary>
    internal double Height { get; }

    /// <summary>Whether it is a floor or ceiling.</summary>
    internal bool IsLevel => !double.IsNaN(Height);

    /// <summary>The fold at an upright mirror, for paths on the side of a place.</summary>
    internal static Fold At(UprightMirror mirror, Point3 place)
    {
        double side = mirror.Before(place.X, place.Y) >= 0 ? 1 : -1;
        return new Fold(
            side * mirror.NormalX, side * mirror.NormalY, side * mirror.Offset, double.NaN, false, mirror.Number);
    }

    /// <summary>The fold at a floor or ceiling.</summary>
    internal static Fold At(LevelMirror mirror) => new(0, 0, 0, mirror.Height, mirror.FacesUp, -1);

    /// <summary>The heights between which a path runs; one of its ends may be an image.</summary>
    internal (double Least, double Greatest) Heights(double from, double to)
    {
        double a = Real(from), b = Real(to);
        double least = Math.Min(a, b), greatest = Math.Max(a, b);
        return !IsLevel ? (least, greatest)
            : facesUp ? (Height, greatest)
            : (least, Height);
    }

    /// <summary>Where an image's height really is.</summary>
    internal double Real(double height) => IsLevel && height < Height == facesUp ? Image(height) : height;

    /// <summary>The image of a height in a level mirror.</summary>
    internal double Image(double height) => (2 * Height) - height;

    /// <summary>The image of a place in an upright mirror.</summary>
    internal Point3 Image(Point3 place)
    {
        double twice = 2 * Before(place.Plan);
        return new Point3(place.X - (twice * normalX), place.Y - (twice * normalY), place.Z);
    }

    /// <summary>Cuts heights to those in front of a level mirror.</summary>
    internal (double Bottom, double Top) Before(double bottom, double top) => !IsLevel ? (bottom, top)
        : facesUp ? (Math.Max(bottom, Height), top)
        : (bottom, Math.Min(top, Height));

    /// <summary>The part of a ray on the plan within whose reach there may be something in front of an upright mirror.</summary>
    internal (Point2 From, Point2 To) Part(in Ray ray)
    {
        Point2 from = ray.From.Plan, to = ray.To.Plan;
        if (Mirror < 0)
        {
            return (from, to);
        }

        double start = Before(from), end = Before(to), reach = ray.ReachMetres;
        return start >= end
            ? (from, from + (Math.Min(1, (start + reach) / (start - end)) * (to - from)))
            : (from + (Math.Max(0, (-reach - start) / (end - start)) * (to - from)), to);
    }

    /// <summary>Cuts a stretch of a line on the plan, between two shares of it, to what lies in front of an upright mirror.</summary>
    internal void Cut(double startX, double startY, double alongX, double alongY, ref double first, ref double last)
    {
        if (Mirror < 0)
        {
            return;
        }

        double before = Before(new Point2(startX, startY));
        double step = (normalX * alongX) + (normalY * alongY);
        if (before + Math.Max(0, step) <= GeometryTolerances.SlackMetres)
        {
            last = -1;
        }
        else if (before < 0)
        {
            first = Math.Max(first, -before / step);
        }
        else if (before + step < 0)
        {
            last = Math.Min(last, -before / step);
        }
    }

    /// <summary>The same for four lines at once.</summary>
    /// <returns>Which of them lie in front of the mirror at all.</returns>
    internal Vector256<double> Cut(
        Vector256<double> startX,
        Vector256<double> startY,
        Vector256<double> alongX,
        Vector256<double> alongY,
        ref Vector256<double> first,
        ref Vector256<double> last)
    {
        if (Mirror < 0)
        {
            return Vector256<double>.AllBitsSet;
        }

        var zero = Vector256<double>.Zero;
        Vector256<double> before = (normalX * startX) + (normalY * startY) - Vector256.Create(offset);
        Vector256<double> step = (normalX * alongX) + (normalY * alongY), at = -before / step;
        Vector256<double> startsBehind = Vector256.LessThan(before, zero), endsBehind = Vector256.LessThan(before + step, zero);
        first = Vector256.ConditionalSelect(startsBehind, Vector256.Max(first, at), first);
        last = Vector256.ConditionalSelect(Vector256.AndNot(endsBehind, startsBehind), Vector256.Min(last, at), last);
        return Vector256.GreaterThan(before + Vector256.Max(zero, step), Vector256.Create(GeometryTolerances.SlackMetres));
    }

    /// <summary>The same for eight lines at once.</summary>
    /// <returns>Which of them lie in front of the mirror at all.</returns>
    internal Vector512<double> Cut(
        Vector512<double> startX,
        Vector512<double> startY,
        Vector512<double> alongX,
        Vector512<double> alongY,
        ref Vector512<double> first,
        ref Vector512<double> last)
    {
        if (Mirror < 0)
        {
            return Vector512<double>.AllBitsSet;
        }

        var zero = Vector512<double>.Zero;
        Vector512<double> before = (normalX * startX) + (normalY * startY) - Vector512.Create(offset);
        Vector512<double> step = (normalX * alongX) + (normalY * alongY), at = -before / step;
        Vector512<double> startsBehind = Vector512.LessThan(before, zero), endsBehind = Vector512.LessThan(before + step, zero);
        first = Vector512.ConditionalSelect(startsBehind, Vector512.Max(first, at), first);
        last = Vector512.ConditionalSelect(Vector512.AndNot(endsBehind, startsBehind), Vector512.Min(last, at), last);
        return Vector512.GreaterThan(before + Vector512.Max(zero, step), Vector512.Create(GeometryTolerances.SlackMetres));
    }

    private double Before(Point2 at) => (normalX * at.X) + (normalY * at.Y) - offset;
}
