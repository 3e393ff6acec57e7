using System.Numerics;
using System.Runtime.Intrinsics;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// The walls of one level as rays' fronts meet them, in flat arrays, with their openings. Walls that continue each other are one
/// (<see cref="JoinedWall"/>).
/// </summary>
internal sealed class WallFronts
{
    private readonly PlanTree tree;
    private readonly PlanPanels panels; // in the order of the tree, as all that follows
    private readonly double[] standsFrom; // walls on a floor are met only by paths that come above it, and those under a ceiling only by paths below
    private readonly double[] standsTo;
    private readonly double[] mirrors;
    private readonly JoinedWall[] walls;

    internal WallFronts(IReadOnlyList<JoinedWall> all)
    {
        tree = new PlanTree([.. all.Select(w => PlanBox.Round(w.Start, w.End))]);
        walls = [.. tree.Order.Select(i => all[i])];
        panels = new PlanPanels([.. walls.Select(w => new PlanPanel(
            w.Start.X, w.Start.Y, w.End.X - w.Start.X, w.End.Y - w.Start.Y, w.Run.From, w.Run.To))]);
        (standsFrom, standsTo, mirrors) = (Column(w => w.VerticalExtent.OnFloor ? w.VerticalExtent.Low : double.NegativeInfinity),
            Column(w => w.VerticalExtent.UnderCeiling ? w.VerticalExtent.High : double.PositiveInfinity),
            Column(w => w.Mirror));
    }

    /// <summary>
    /// Adds the pieces in the ray's front, each opening separately from the wall around it; walls of the mirror itself are left out.
    /// </summary>
    internal void Gather(in Ray ray, in Fold fold, TraceBuffer buffer)
    {
        using Scratch scratch = Scratch.Open();
        Span<double> rows = scratch.Of<double>(PanelLanes.Room);
        (double least, double greatest) = fold.Heights(ray.From.Z, ray.To.Z);
        (Point2 from, Point2 to) = fold.Part(ray);
        int count = tree.QueryGroups(from, to, ref buffer.Candidates, ray.ReachMetres);
        for (int c = 0; c < count; c += 2)
        {
            int group = buffer.Candidates[c];
            Vector512<double> isLeftOut = Vector512.LessThanOrEqual(Vector512.Create(greatest), PlanPanels.Group(standsFrom, group))
                | Vector512.GreaterThanOrEqual(Vector512.Create(least), PlanPanels.Group(standsTo, group))
                | (fold.Mirror >= 0 ? Vector512.Equals(PlanPanels.Group(mirrors, group), Vector512.Create((double)fold.Mirror)) : default);
            uint wanted = (uint)buffer.Candidates[c + 1] & ~(uint)isLeftOut.ExtractMostSignificantBits();
            if (wanted == 0)
            {
                continue;
            }

            var lanes = new PanelLanes(in ray, fold, panels, group, wanted, rows);
            for (uint met = lanes.Met; met != 0; met &= met - 1)
            {
                int lane = BitOperations.TrailingZeroCount(met);
                Add(walls[(group * PlanPanels.Lanes) + lane], lanes[lane], lanes.CosIncidence(lane), fold, least, greatest, buffer);
            }

            for (uint single = lanes.Single; single != 0; single &= single - 1)
            {
                int i = (group * PlanPanels.Lanes) + BitOperations.TrailingZeroCount(single);
                PlanPanel panel = panels[i] with { TakesIn = true };
                var front = new PanelFront(in ray, in fold, panel);
                if (front.IsMet)
                {
                    double turn = Math.Abs((ray.EastX * panel.AlongY) - (ray.NorthY * panel.AlongX));
                    double cosine = front.CosIncidence(Math.Min(1, turn * ray.CosSlope * panels.EachMetre[i]), panel);
                    Add(walls[i], front, cosine, fold, least, greatest, buffer);
                }
            }
        }
    }

    // Adds a wall and its openings.
    private static void Add(JoinedWall wall, in PanelFront front, double cosIncidence, in Fold fold, double least, double greatest, TraceBuffer buffer)
    {
        VerticalExtent rise = wall.VerticalExtent;
        double bottom = rise.BottomFor(least), top = rise.TopFor(greatest);
        var piece = new Piece { Plane = wall.Mirror, CosIncidence = cosIncidence, Share = 1 };
        Share left = new(front.First, front.AtFirst), last = new(front.Last, front.AtLast);
        foreach (ref readonly OpeningPanel opening in wall.OpeningsWithin(front.First, front.Last))
        {
            Share start = At(front, opening.From, left, last), end = At(front, opening.To, start, last);
            double sill = opening.Low <= rise.Low + VerticalExtent.SameMetres ? bottom : opening.Low;
            double head = opening.High >= rise.High - VerticalExtent.SameMetres ? top : opening.High;
            AddPieces(buffer, front, fold, ref piece, wall.Material, new Patch(left, start, bottom, top));
            AddPieces(buffer, front, fold, ref piece, wall.Material, new Patch(start, end, bottom, sill));
            AddPieces(buffer, front, fold, ref piece, opening.Filling, new Patch(start, end, sill, head));
            AddPieces(buffer, front, fold, ref piece, wall.Material, new Patch(start, end, head, top));
            left = end;
        }

        AddPieces(buffer, front, fold, ref piece, wall.Material, new Patch(left, last, bottom, top));
    }

    // A number of each wall, in whole groups.
    private double[] Column(Func<JoinedWall, double> number)
    {
        double[] column = new double[panels.StartX.Length];
        for (int i = 0; i < walls.Length; i++)
        {
            column[i] = number(walls[i]);
        }

        return column;
    }

    // A place on a wall no closer to its start than one place and no farther than another.
    private static Share At(in PanelFront front, double u, in Share from, in Share last) =>
        u <= from.Along ? from : u >= last.Along ? last : new(u, front.At(u));

    // Adds what fills a patch of a wall, and its image in a floor or ceiling.
    private static void AddPieces(TraceBuffer buffer, in PanelFront front, in Fold fold, ref Piece piece, int filling, in Patch patch)
    {
        if (filling < 0
            || patch.From.Along >= patch.To.Along
            || patch.Bottom >= patch.Top
            || !front.TryBetween(patch.From.Along, patch.From.OnFront, patch.To.Along, patch.To.OnFront, out piece.Low, out piece.High))
        {
            return;
        }

        piece.Material = filling;
        front.Heights.Add(buffer, fold, piece, patch.Bottom, patch.Top);
    }

    // A place on a wall: share of its length, and where on the front it is, v.
    private readonly record struct Share(double Along, double OnFront);

    // Part of a wall between two places on it and two heights.
    private readonly record struct Patch(Share From, Share To, double Bottom, double Top);
}
