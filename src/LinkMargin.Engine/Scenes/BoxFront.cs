using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>A solid fixture in a ray's wave front: its silhouette. Of a hollow one there are panels (<see cref="ShellFront"/>).</summary>
internal static class BoxFront
{
    /// <summary>Adds the piece of a solid thing in the ray's front.</summary>
    /// <param name="box">The thing.</param>
    /// <param name="ray">The ray.</param>
    /// <param name="fold">Where it is reflected.</param>
    /// <param name="least">Least height of the path, metres.</param>
    /// <param name="greatest">Greatest height.</param>
    /// <param name="mayHoldAnEnd">Whether an end of the ray or of its leg may lie inside.</param>
    /// <param name="buffer">Receives the piece.</param>
    internal static void GatherSolid(FixtureBox box, in Ray ray, in Fold fold, double least, double greatest, bool mayHoldAnEnd, TraceBuffer buffer)
    {
        if (fold.Mirror >= 0 && box.HasMirror(fold.Mirror))
        {
            return; // a path reflected by a solid thing does not run through it
        }

        if (mayHoldAnEnd && TryGatherFromInside(box, ray, fold, buffer))
        {
            return;
        }

        var piece = new Piece { Plane = box.FirstPlane, Material = box.Material, CosIncidence = 1 };
        if (Shade(box, ray, fold, mayHoldAnEnd, out piece.Low, out piece.High, out double enter, out double leave))
        {
            piece.Share = box.BulkThickness is double thickness ? box.ChordMetres(ray) / thickness : 1;
            FrontHeights.OfBox(ray, enter, leave).Add(buffer, fold, piece, box.VerticalExtent.BottomFor(least), box.VerticalExtent.TopFor(greatest));
        }
    }

    // Where the footprint is on the front, and where the line enters and leaves it or comes closest, metres on the plan; false where that is out of reach.
    private static bool Shade(
        FixtureBox box, in Ray ray, in Fold fold, bool mayHoldAnEnd, out double right, out double left, out double enter, out double leave)
    {
        BoxSilhouette silhouette = BoxSilhouette.Of(box, ray, fold);
        (right, left) = (silhouette.Right, silhouette.Left);

        (enter, leave) = (silhouette.Enter * ray.PlanMetres, silhouette.Leave * ray.PlanMetres);
        if (mayHoldAnEnd)
        {
            // With an end above or below it, unless that is an image, it goes on beyond that end.
            bool isImage = fold.Mirror >= 0;
            bool startsOver = (!isImage || ray.Start == 0) && box.Covers(ray.From.Plan), endsOver = (!isImage || ray.End == 1) && box.Covers(ray.To.Plan);
            if ((startsOver || endsOver) && box.ChordOf(ray.From.Plan, new Point2(ray.EastX, ray.NorthY)) is var (first, last))
            {
                (enter, leave) = (startsOver ? Math.Min(first, 0) : enter, endsOver ? Math.Max(last, ray.PlanMetres) : leave);
                (right, left) = fold.IsLevel || isImage ? (right, left) : Sideways(box, ray, first / ray.PlanMetres, last / ray.PlanMetres);
            }
        }

        return left >= right && left > -ray.Reach.End && right < ray.Reach.End;
    }

    // The stretch of the front that a footprint above or below an end takes up, v: as wide as the thing is where the line, or the nearest part of it, is as
    // high as the thing. On the plan the line enters and leaves it at two shares of its length, one of them beyond its end.
    private static (double Right, double Left) Sideways(FixtureBox box, in Ray ray, double enter, double leave)
    {
        double rise = ray.To.Z - ray.From.Z;
        if (rise == 0)
        {
            return (double.NegativeInfinity, double.PositiveInfinity);
        }

        double one = (box.VerticalExtent.Low - ray.From.Z) / rise, other = (box.VerticalExtent.High - ray.From.Z) / rise;
        double hair = GeometryTolerances.SlackMetres / ray.PlanMetres; // within the footprint, so that rounding does not decide
        double from = Math.Max(enter + hair, ray.Least), to = Math.Max(from, Math.Min(leave - hair, ray.Greatest));
        double least = Math.Clamp(Math.Min(one, other), from, to), greatest = Math.Clamp(Math.Max(one, other), from, to);
        double right = double.PositiveInfinity, left = double.NegativeInfinity;
        for (int i = 0; i < box.Corners.Length; i++)
        {
            Point2 start = box.Corners[i], end = box.Corners[(i + 1) % box.Corners.Length];
            double first = ray.Abreast(start.X, start.Y), last = ray.Abreast(end.X, end.Y);
            double leftOfStart = ray.LeftOf(start.X, start.Y), step = ray.LeftOf(end.X, end.Y) - leftOfStart;
            if (first == last || Math.Max(first, last) < least || Math.Min(first, last) > greatest)
            {
                continue; // along the front, or not abreast of that part of the line
            }

            foreach (double t in (ReadOnlySpan<double>)[Math.Clamp(first, least, greatest), Math.Clamp(last, least, greatest)])
            {
                double v = Math.Sqrt(2) * (leftOfStart + ((t - first) / (last - first) * step)) / ray.RadiusAt(t);
                (right, left) = (Math.Min(right, v), Math.Max(left, v));
            }
        }

        return right < left ? (right, left) : (double.NegativeInfinity, double.PositiveInfinity);
    }

    // With an end of the path inside, the whole front passes through the thing; false where neither real end is. A leg's end at the
    // mirror does not count. For a path reflected by a floor or ceiling, both legs are here.
    private static bool TryGatherFromInside(FixtureBox box, in Ray ray, in Fold fold, TraceBuffer buffer)
    {
        Point3 from = ray.PointAt(ray.Start), to = ray.PointAt(ray.End);
        Point3 start = fold.IsLevel ? ray.From.Plan.At(fold.Real(ray.From.Z)) : from;
        bool startsInside = (fold.IsLevel || ray.Start == 0) && box.Holds(start), endsInside = ray.End == 1 && box.Holds(to);
        if (!startsInside && !endsInside)
        {
            return false;
        }

        double inside = InsideMetres(box, from, to) + (fold.IsLevel ? InsideMetres(box, start, from) : 0);
        if (inside > 0)
        {
            Add(box, buffer, box.BulkThickness is double thickness ? inside / thickness : 1);
        }

        return true;
    }

    private static double InsideMetres(FixtureBox box, Point3 from, Point3 to) => box.Pierce(from, to, out BoxPassage passage)
        ? (Math.Min(passage.Leave, 1) - Math.Max(passage.Enter, 0)) * from.DistanceTo(to)
        : 0;

    // A piece that takes up all of the front.
    private static void Add(FixtureBox box, TraceBuffer buffer, double share) =>
        buffer.NextPiece() = new Piece
        {
            Low = double.NegativeInfinity,
            High = double.PositiveInfinity,
            Bottom = double.NegativeInfinity,
            Top = double.PositiveInfinity,
            Plane = Piece.NoPlane,
            Material = box.Material,
            CosIncidence = 1,
            Share = share,
        };
}
