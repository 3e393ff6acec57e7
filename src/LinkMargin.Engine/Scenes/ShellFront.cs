using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// A hollow fixture in a ray's wave front. For a ray that passes it, its sides are panels with air above and beside them, and its lid and underside stand
/// between them (<see cref="ShellCrossing"/>). For a ray from inside, the air above a side is behind the lid, and the air beside the lid is behind a side: whatever leaves a closed box
/// passes one of its panels.
/// </summary>
internal static class ShellFront
{
    // Over this range of cos² about 45° a side is partly across a ray.
    private const double DiagonalWidth = 0.2;

    /// <summary>Adds the upright pieces in the ray's front.</summary>
    /// <param name="box">The shell.</param>
    /// <param name="ray">The ray.</param>
    /// <param name="fold">Where it is reflected.</param>
    /// <param name="least">Least height of the path, metres.</param>
    /// <param name="greatest">Greatest height.</param>
    /// <param name="buffer">Receives the pieces.</param>
    internal static void Gather(FixtureBox box, in Ray ray, in Fold fold, double least, double greatest, TraceBuffer buffer)
    {
        // Where its sides start and end for this ray: infinity where nothing passes below or above.
        double bottom = box.VerticalExtent.BottomFor(least), top = box.VerticalExtent.TopFor(greatest);
        FoldedOutlets outlets = FoldedOutlets.Of(box, ray, fold);
        if (outlets.AreLevel)
        {
            return; // it leaves by lid or underside: those are its front
        }

        Span<SideCrossed> crossed = stackalloc SideCrossed[outlets.AreNone && ShellCrossing.IsThrough(box, ray) && ShellCrossing.HasPlates(box, bottom, top) ? ShellCrossing.MostSides : 0];
        for (int i = 0; i < box.Corners.Length; i++)
        {
            BoxSides side = FixtureBox.PanelSides[i];
            int material = box.PanelOn(side);
            if ((material == FixtureBox.Open && outlets.AreNone && crossed.IsEmpty) || (fold.Mirror >= 0 && box.MirrorOf(side) == fold.Mirror))
            {
                continue;
            }

            Point2 start = box.Corners[i], along = box.Corners[(i + 1) % box.Corners.Length] - start;
            var panel = new PlanPanel(start.X, start.Y, along.X, along.Y);
            var front = new PanelFront(in ray, in fold, panel);
            var piece = new Piece { Plane = box.FirstPlane + i, Material = material, Share = 1 };
            if (!front.IsMet || !front.TryBetween(front.First, front.AtFirst, front.Last, front.AtLast, out piece.Low, out piece.High))
            {
                continue;
            }

            double metres = front.NearestAlong * ray.PlanMetres;
            var heights = FrontHeights.OfBox(ray, metres, metres);
            if (!crossed.IsEmpty)
            {
                crossed[i] = new SideCrossed(piece.Plane, piece.Low, piece.High, front.NearestAlong, heights);
            }

            Outlet? outlet = outlets.At(front.NearestAlong);
            if (outlet is { IsLevel: true })
            {
                continue; // a reflection within the shell: this leg leaves by lid or underside, the other by a side
            }

            if (material != FixtureBox.Open)
            {
                double turn = Math.Abs((ray.EastX * along.Y) - (ray.NorthY * along.X));
                piece.CosIncidence = front.CosIncidence(Math.Min(1, turn * ray.CosSlope / Math.Sqrt(Point2.Dot(along, along))), panel);
                heights.Add(buffer, fold, piece, bottom, top);
            }

            if (outlet is { } inside)
            {
                double away = inside.PlanMetresTo(box, i), line = fold.Real(ray.HeightAt(front.NearestAlong));
                double scale = Math.Sqrt(2) * ray.CosSlope / ray.RadiusAt(front.NearestAlong);
                double toTop = scale * (top - line), toBottom = scale * (line - bottom);
                double toCorner = (inside.Side & side) == 0 ? 0 : Math.Min(Math.Abs(piece.Low), Math.Abs(piece.High)), across = ShareAcross(box, ray, i);
                FarEdge? far = fold.IsLevel ? null : FarEdge.Of(box, ray, inside);
                var above = new Beyond(BoxSides.Top, top, double.PositiveInfinity, away, Next(toBottom, toCorner, toTop, across));
                var below = new Beyond(BoxSides.Bottom, double.NegativeInfinity, bottom, away, Next(toTop, toCorner, toBottom, across));
                AddBeyond(box, ray, above, inside, far, piece, heights, fold, buffer);
                AddBeyond(box, ray, below, inside, far, piece, heights, fold, buffer);
            }
        }

        if (!crossed.IsEmpty)
        {
            ShellCrossing.Gather(box, ray, fold, buffer, crossed, bottom, top);
        }
    }

    /// <summary>Adds the lid and the underside that a leg passes through.</summary>
    /// <param name="box">The shell.</param>
    /// <param name="leg">The leg.</param>
    /// <param name="ray">The ray whose front has the leg's upright pieces: of both legs where a floor or ceiling reflects the path.</param>
    /// <param name="fold">Where it is reflected.</param>
    /// <param name="buffer">Receives the pieces.</param>
    internal static void GatherPlates(FixtureBox box, in Ray leg, in Ray ray, in Fold fold, TraceBuffer buffer)
    {
        // Where it leaves by a side, that side's front includes what passes above and below it.
        Outlet? outlet = Outlet.Of(box, leg);
        if (outlet is { IsLevel: true } level)
        {
            LevelOutletFront.Gather(box, leg, level, buffer);
        }

        // A ray from outside to outside has them in the front of the sides.
        bool onlyAtMirror = outlet is not null || (ShellCrossing.IsThrough(box, ray) && FoldedOutlets.Of(box, ray, fold).AreNone);
        GatherPlate(box, leg, buffer, box.VerticalExtent.Low, BoxSides.Bottom, onlyAtMirror);
        GatherPlate(box, leg, buffer, box.VerticalExtent.High, BoxSides.Top, onlyAtMirror);
    }

    // The part of the front above or below a side that a ray from inside leaves by: it has come through lid or underside, or over the far edge of that.
    private static void AddBeyond(
        FixtureBox box,
        in Ray ray,
        in Beyond beyond,
        in Outlet inside,
        in FarEdge? far,
        in Piece side,
        in FrontHeights heights,
        in Fold fold,
        TraceBuffer buffer)
    {
        if (double.IsInfinity(beyond.Edge))
        {
            return;
        }

        (double ofPlate, double ofSide) = SharesOf(beyond.Next);
        Piece plate = side;
        plate.Material = box.PanelOn(beyond.Plate);
        plate.Share = ofPlate;
        plate.CosIncidence = Cosine(Math.Abs(beyond.Edge - inside.From.Z), beyond.AwayMetres);
        if (far is not { } edge)
        {
            AddIfAny(heights, fold, plate, beyond, buffer);
        }
        else if (ofPlate > 0)
        {
            bool isAbove = beyond.Plate == BoxSides.Top;
            double near = heights.Of(beyond.Edge), end = edge.Heights.Of(beyond.Edge);
            AddIfIn(plate, isAbove ? near : end, isAbove ? end : near, ray.Reach, buffer);
            plate.Material = box.PanelOn(FixtureBox.PanelSides[edge.Side]);
            plate.CosIncidence = Cosine(edge.AcrossMetres, double.Hypot(beyond.Edge - inside.From.Z, edge.AlongMetres));
            AddIfIn(plate, isAbove ? Math.Max(near, end) : double.NegativeInfinity, isAbove ? double.PositiveInfinity : Math.Min(near, end), ray.Reach, buffer);
        }

        AddIfAny(heights, fold, side with { Share = ofSide }, beyond, buffer);
    }

    private static void AddIfAny(in FrontHeights heights, in Fold fold, in Piece piece, in Beyond beyond, TraceBuffer buffer)
    {
        if (piece.Material != FixtureBox.Open && piece.Share > 0)
        {
            heights.Add(buffer, fold, piece, beyond.From, beyond.To);
        }
    }

    private static void AddIfIn(in Piece piece, double bottom, double top, in FrontReach reach, TraceBuffer buffer)
    {
        if (piece.Material != FixtureBox.Open && bottom < top && bottom < reach.End && top > -reach.End)
        {
            buffer.NextPiece() = piece with { Bottom = bottom, Top = top };
        }
    }

    /// <summary>
    /// How much of its loss the face beyond an edge counts, and how much the face that the ray leaves by, as if that went on: whichever loses more.
    /// A ray through the opposite edge, or through a corner, leaves by another face as well, whose front does not have the face beyond this one. So that
    /// face fades in with the distance from there.
    /// </summary>
    /// <param name="fromOther">That distance, v.</param>
    internal static (double OfNext, double OfThis) Shares(double fromOther) => SharesOf(Fade.In(fromOther));

    private static (double OfNext, double OfThis) SharesOf(double next) => (Math.Min(1, 2 * next), Math.Min(1, 2 * (1 - next)));

    // 1 for a side across the ray, 0 for one along it, by degrees about 45°.
    private static double ShareAcross(FixtureBox box, in Ray ray, int side)
    {
        Point2 outward = box.OutwardOf(side);
        double cosine = (outward.X * ray.EastX) + (outward.Y * ray.NorthY);
        return Fade.In(0.5 + (((cosine * cosine) - 0.5) / DiagonalWidth));
    }

    // How far the face beyond a level edge of a side has faded in. Where a ray that leaves by another face sees that side: at the opposite edge; and for a
    // side that stands along the ray, whose level edges bound the lid to the left and right (LevelOutletFront), at the corner where the three faces meet.
    private static double Next(double toOpposite, double toCorner, double toEdge, double across) =>
        (across * Fade.In(toOpposite)) + ((1 - across) * Fade.In(Math.Min(toOpposite, Math.Max(toCorner, toEdge))));

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

    // What a ray that leaves a shell by a side would leave by above or below it, and how far that has faded in.
    private readonly record struct Beyond(BoxSides Plate, double From, double To, double AwayMetres, double Next)
    {
        // The height of the edge between.
        internal double Edge => Plate == BoxSides.Top ? From : To;
    }

    // The side behind the end inside, where lid and underside end there.
    private readonly record struct FarEdge(int Side, double AcrossMetres, double AlongMetres, FrontHeights Heights)
    {
        // None for the other leg of a reflection within the shell: it does not run along the ray, and starts at the side that reflects it.
        internal static FarEdge? Of(FixtureBox box, in Ray ray, in Outlet inside)
        {
            double onwards = (inside.Onwards.X * ray.EastX) + (inside.Onwards.Y * ray.NorthY);
            if (Math.Abs(onwards) < 1 - GeometryTolerances.ParallelSine || box.ChordOf(inside.From.Plan, inside.Onwards) is not var (back, _)
                || back > -GeometryTolerances.SlackMetres)
            {
                return null;
            }

            Point2 at = inside.From.Plan + (back * inside.Onwards);
            int side = 0;
            for (int i = 1; i < box.Corners.Length; i++)
            {
                side = Math.Abs(box.DepthBehind(i, at)) < Math.Abs(box.DepthBehind(side, at)) ? i : side;
            }

            double from = ray.Abreast(inside.From.X, inside.From.Y) * ray.PlanMetres, across = box.DepthBehind(side, inside.From.Plan);
            return new FarEdge(
                side, across, Math.Sqrt(Math.Max(0, (back * back) - (across * across))), FrontHeights.OfBox(ray, from + (Math.Sign(onwards) * back), from));
        }
    }

    /// <summary>Cosine of the angle to a normal, by the distances along it and across it.</summary>
    internal static double Cosine(double alongNormal, double across)
    {
        double length = double.Hypot(alongNormal, across);
        return length > 0 ? Math.Clamp(Math.Abs(alongNormal) / length, 0, 1) : 1;
    }
}
