using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>A fixture in a ray's wave front: its silhouette if it is solid, its panels (<see cref="ShellFront"/>) if it is hollow.</summary>
internal static class BoxFront
{
    /// <summary>Adds the upright pieces in the ray's front: all of a solid thing, the sides of a shell.</summary>
    internal static void Gather(FixtureBox box, in Ray ray, in Fold fold, TraceBuffer buffer)
    {
        (double least, double greatest) = fold.Heights(ray.From.Z, ray.To.Z);
        if (!box.VerticalExtent.IsMetBetween(least, greatest))
        {
            return;
        }

        double along = ray.Abreast(box.Centre.X, box.Centre.Y), reach = box.RadiusMetres / ray.PlanMetres;
        double aside = Math.Abs(ray.LeftOf(box.Centre.X, box.Centre.Y)) - box.RadiusMetres;
        if (aside > 0 && ray.IsOutOfReach(aside, along - reach, along + reach))
        {
            return;
        }

        double bottom = box.VerticalExtent.BottomFor(least), top = box.VerticalExtent.TopFor(greatest);
        if (box.IsShell)
        {
            ShellFront.Gather(box, ray, fold, buffer, bottom, top);
            return;
        }

        if (fold.Mirror >= 0 && box.HasMirror(fold.Mirror))
        {
            return; // a path reflected by a solid thing does not run through it
        }

        if (TryGatherFromInside(box, ray, fold, buffer))
        {
            return;
        }

        var piece = new Piece { Plane = box.FirstPlane, Material = box.Material, CosIncidence = 1 };
        if (Shade(box, ray, fold, out piece.Low, out piece.High, out double enter, out double leave))
        {
            piece.Share = box.BulkThickness is double thickness ? box.ChordMetres(ray) / thickness : 1;
            FrontHeights.Between(ray, enter, leave).Add(buffer, fold, piece, bottom, top);
        }
    }

    // Where the footprint is on the front, and where the line enters and leaves it or comes closest; false where that is out of reach.
    private static bool Shade(
        FixtureBox box, in Ray ray, in Fold fold, out double right, out double left, out double enter, out double leave)
    {
        BoxSilhouette silhouette = BoxSilhouette.Of(box, ray, fold);
        (right, left) = (silhouette.Right, silhouette.Left);

        // An end above or below the footprint counts as on it, unless it is an image.
        bool isImage = fold.Mirror >= 0;
        enter = (!isImage || ray.Start == 0) && box.Covers(ray.From.Plan) ? 0 : silhouette.Enter;
        leave = (!isImage || ray.End == 1) && box.Covers(ray.To.Plan) ? 1 : silhouette.Leave;
        return left >= right && left > -ray.Reach.End && right < ray.Reach.End;
    }

    // With an end of the path inside, the whole front passes through the thing; false where neither real end is. A leg's end at the
    // mirror does not count. For a path reflected by a floor or ceiling, both legs are here.
    private static bool TryGatherFromInside(FixtureBox box, in Ray ray, in Fold fold, TraceBuffer buffer)
    {
        if (!IsNear(box, ray, ray.Start) && !IsNear(box, ray, ray.End) && !IsNear(box, ray, 0))
        {
            return false;
        }

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

    // Whether a place on the ray may lie above or below the box's footprint.
    private static bool IsNear(FixtureBox box, in Ray ray, double t)
    {
        double x = ray.From.X + (t * (ray.To.X - ray.From.X)) - box.Centre.X, y = ray.From.Y + (t * (ray.To.Y - ray.From.Y)) - box.Centre.Y;
        return (x * x) + (y * y) <= box.RadiusMetres * box.RadiusMetres;
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
