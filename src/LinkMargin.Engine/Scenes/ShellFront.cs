using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// A hollow fixture in a ray's wave front. For a ray that passes it, its sides are panels with air above and beside them. For a ray
/// from inside, the air above a side is behind the lid, and the air beside the lid is behind a side: whatever leaves a closed box
/// passes one of its panels.
/// </summary>
internal static class ShellFront
{
    /// <summary>Adds the upright pieces in the ray's front.</summary>
    /// <param name="box">The shell.</param>
    /// <param name="ray">The ray.</param>
    /// <param name="fold">Where it is reflected.</param>
    /// <param name="buffer">Receives the pieces.</param>
    /// <param name="bottom">Where the shell's sides start for this ray, metres above the lowest floor; −∞ where nothing passes below.</param>
    /// <param name="top">Where they end; ∞ where nothing passes above.</param>
    internal static void Gather(FixtureBox box, in Ray ray, in Fold fold, TraceBuffer buffer, double bottom, double top)
    {
        FoldedOutlets outlets = FoldedOutlets.Of(box, ray, fold);
        if (outlets.AreLevel)
        {
            return; // it leaves by lid or underside: those are its front
        }

        for (int i = 0; i < box.Corners.Length; i++)
        {
            BoxSides side = FixtureBox.PanelSides[i];
            int material = box.PanelOn(side);
            if ((material == FixtureBox.Open && outlets.AreNone) || (fold.Mirror >= 0 && box.MirrorOf(side) == fold.Mirror))
            {
                continue;
            }

            Point2 start = box.Corners[i], along = box.Corners[(i + 1) % box.Corners.Length] - start;
            var front = new PanelFront(in ray, in fold, new PlanPanel(start.X, start.Y, along.X, along.Y));
            var piece = new Piece { Plane = box.FirstPlane + i, Material = material, Share = 1 };
            if (!front.IsMet || !front.TryBetween(front.First, front.AtFirst, front.Last, front.AtLast, out piece.Low, out piece.High))
            {
                continue;
            }

            Outlet? outlet = outlets.At(front.NearestAlong);
            if (outlet is { IsLevel: true })
            {
                continue; // a reflection within the shell: this leg leaves by lid or underside, the other by a side
            }

            if (material != FixtureBox.Open)
            {
                double turn = Math.Abs((ray.EastX * along.Y) - (ray.NorthY * along.X));
                piece.CosIncidence = Math.Min(1, turn * ray.CosSlope / Math.Sqrt(Point2.Dot(along, along)));
                front.Heights.Add(buffer, fold, piece, bottom, top);
            }

            if (outlet is { } inside)
            {
                double away = inside.PlanMetresTo(box, i);
                AddBeyond(box, BoxSides.Top, inside, away, top, double.PositiveInfinity, piece, front.Heights, fold, buffer);
                AddBeyond(box, BoxSides.Bottom, inside, away, double.NegativeInfinity, bottom, piece, front.Heights, fold, buffer);
            }
        }
    }

    /// <summary>Adds the lid and the underside that a leg passes through.</summary>
    internal static void GatherPlates(FixtureBox box, in Ray leg, TraceBuffer buffer)
    {
        // Where it leaves by a side, that side's front includes what passes above and below it.
        Outlet? outlet = Outlet.Of(box, leg);
        if (outlet is { IsLevel: true } level)
        {
            AddLevelOutlet(box, leg, level, buffer);
        }

        GatherPlate(box, leg, buffer, box.VerticalExtent.Low, BoxSides.Bottom, outlet is not null);
        GatherPlate(box, leg, buffer, box.VerticalExtent.High, BoxSides.Top, outlet is not null);
    }

    // The part of the front above or below a side that a ray from inside leaves by: it has come through lid or underside.
    private static void AddBeyond(
        FixtureBox box,
        BoxSides plate,
        in Outlet inside,
        double awayMetres,
        double from,
        double to,
        in Piece side,
        in FrontHeights heights,
        in Fold fold,
        TraceBuffer buffer)
    {
        int material = box.PanelOn(plate);
        if (material == FixtureBox.Open || double.IsInfinity(plate == BoxSides.Top ? from : to))
        {
            return;
        }

        Piece beyond = side;
        double rise = Math.Abs((plate == BoxSides.Top ? from : to) - inside.From.Z);
        beyond.Material = material;
        beyond.CosIncidence = Cosine(rise, awayMetres);
        heights.Add(buffer, fold, beyond, from, to);
    }

    // The lid, or the underside, that a ray from inside leaves by, with the sides around it: as a rectangle in the ray's front,
    // each edge as far from the line as it is there.
    private static void AddLevelOutlet(FixtureBox box, in Ray leg, in Outlet outlet, TraceBuffer buffer)
    {
        double dz = leg.To.Z - leg.From.Z, sinSlope = Math.Abs(dz) / leg.LengthMetres;
        double t = Math.Clamp((outlet.HeightMetres(box) - leg.From.Z) / dz, leg.Least, leg.Greatest);
        double scale = Math.Sqrt(2) / leg.RadiusAt(t);
        Point2 at = leg.PointAt(t).Plan;
        double rise = Math.Abs(outlet.HeightMetres(box) - outlet.From.Z);
        var whole = new Piece
        {
            Low = double.NegativeInfinity,
            High = double.PositiveInfinity,
            Bottom = double.NegativeInfinity,
            Top = double.PositiveInfinity,
            Plane = box.LevelPlane,
            Share = 1,
        };
        Piece plate = whole with { Material = box.PanelOn(outlet.Side), CosIncidence = sinSlope };

        // Two of its edges run more along the ray than the other two and bound the front to the left and right.
        Span<Piece> beyond = stackalloc Piece[4];
        for (int i = 0; i < beyond.Length; i++)
        {
            Point2 normal = box.OutwardOf(i);
            double onwards = (normal.X * leg.EastX) + (normal.Y * leg.NorthY);
            double left = (normal.Y * leg.EastX) - (normal.X * leg.NorthY);
            double depth = Math.Max(0, box.DepthBehind(i, at));
            double v = depth > 0 ? scale * MetresToEdge(leg, at, box.Corners[i], box.Corners[(i + 1) % box.Corners.Length], sinSlope) : 0;
            Point3 edge = (at + (depth * normal)).At(outlet.From.Z + rise);
            double away = Point2.Dot(edge.Plan - outlet.From.Plan, normal);
            beyond[i] = whole with
            {
                Material = box.PanelOn(FixtureBox.PanelSides[i]),
                CosIncidence = Cosine(away, Math.Sqrt(Math.Max(0, Square(outlet.From.DistanceTo(edge)) - (away * away)))),
            };
            if (box.IsAcross(leg, i))
            {
                // On a lid that the ray rises through, what is farther onwards is below its line.
                bool isUnder = onwards > 0 == dz > 0;
                (beyond[i].Bottom, beyond[i].Top) = isUnder ? (double.NegativeInfinity, -v) : (v, double.PositiveInfinity);
                (plate.Bottom, plate.Top) = isUnder ? (-v, plate.Top) : (plate.Bottom, v);
            }
            else
            {
                (beyond[i].Low, beyond[i].High) = left > 0 ? (v, double.PositiveInfinity) : (double.NegativeInfinity, -v);
                (plate.Low, plate.High) = left > 0 ? (plate.Low, v) : (-v, plate.High);
            }
        }

        AddIfIn(buffer, plate);
        foreach (ref Piece piece in beyond)
        {
            // Above and below the plate; what is beside it belongs to the other sides.
            bool isAcross = double.IsInfinity(piece.Low) && double.IsInfinity(piece.High);
            (piece.Low, piece.High) = isAcross ? (plate.Low, plate.High) : (piece.Low, piece.High);
            AddIfIn(buffer, piece);
        }
    }

    // How far an edge of a lid or underside is from the place where the line passes that, seen along the line. The lid is foreshortened, so an edge
    // aslant to the line would come near only where it has ended already.
    private static double MetresToEdge(in Ray leg, Point2 at, Point2 start, Point2 end, double sinSlope)
    {
        Point2 from = Seen(leg, start - at), along = Seen(leg, end - at) - from;
        double share = Math.Clamp(-Point2.Dot(from, along) / Point2.Dot(along, along), 0, 1);
        Point2 nearest = from + (share * along);
        return Math.Sqrt(Point2.Dot(nearest, nearest));

        Point2 Seen(in Ray line, Point2 to) =>
            new((line.EastX * to.Y) - (line.NorthY * to.X), ((line.EastX * to.X) + (line.NorthY * to.Y)) * sinSlope);
    }

    private static void AddIfIn(TraceBuffer buffer, in Piece piece)
    {
        if (piece.Material != FixtureBox.Open
            && piece.Low < EdgeKernel.Reach && piece.High > -EdgeKernel.Reach
            && piece.Bottom < EdgeKernel.Reach && piece.Top > -EdgeKernel.Reach)
        {
            buffer.NextPiece() = piece;
        }
    }

    // A plate in the plane of the floor or ceiling that reflects the leg is passed once, wherever the leg leaves the shell: on the first
    // leg, however rounding moves the end of that leg.
    private static void GatherPlate(FixtureBox box, in Ray leg, TraceBuffer buffer, double height, BoxSides side, bool onlyAtMirror)
    {
        double dz = leg.To.Z - leg.From.Z;
        double t = (height - leg.From.Z) / dz;
        int material = box.PanelOn(side);
        bool isAtMirror = leg.End < 1 && Math.Abs(t - leg.End) * leg.LengthMetres <= GeometryTolerances.SlackMetres;
        bool isAfterMirror = leg.Start > 0 && Math.Abs(t - leg.Start) * leg.LengthMetres <= GeometryTolerances.SlackMetres;
        if (material == FixtureBox.Open
            || isAfterMirror
            || (onlyAtMirror && !isAtMirror)
            || !((isAtMirror || leg.Holds(t)) && t > leg.Least && t < leg.Greatest))
        {
            return;
        }

        double shade = LevelPlate.Shade(leg, t, box.DepthOf(leg.PointAt(t).Plan));
        if (shade > 0)
        {
            buffer.NextPiece() = new Piece
            {
                Low = double.NegativeInfinity,
                High = double.PositiveInfinity,
                Bottom = double.NegativeInfinity,
                Top = double.PositiveInfinity,
                Plane = Piece.NoPlane,
                Material = material,
                Beside = 1 - shade,
                CosIncidence = Math.Abs(dz) / leg.LengthMetres,
                Share = 1,
            };
        }
    }

    private static double Cosine(double alongNormal, double across)
    {
        double length = double.Hypot(alongNormal, across);
        return length > 0 ? Math.Clamp(Math.Abs(alongNormal) / length, 0, 1) : 1;
    }

    private static double Square(double x) => x * x;
}
