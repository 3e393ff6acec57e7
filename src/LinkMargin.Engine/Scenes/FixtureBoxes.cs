using System.Numerics;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>The fixtures of a house as turned boxes.</summary>
internal sealed class FixtureBoxes
{
    private readonly PlanTree tree;
    private readonly FixtureBox[] boxes;
    private readonly FixtureBox[] ordered; // in the order of the tree
    private readonly BoxLanes lanes; // the same
    private readonly double[] plateHeights; // of the lids and undersides of shells

    internal FixtureBoxes(IReadOnlyList<FixtureBox> boxes)
    {
        this.boxes = [.. boxes];
        plateHeights = [.. boxes.Where(box => box.IsShell).SelectMany(box => new[] { box.VerticalExtent.Low, box.VerticalExtent.High }).Distinct()];
        tree = new PlanTree([.. boxes.Select(b => b.Bounds)]);
        ordered = [.. tree.Order.Select(i => boxes[i])];
        lanes = new BoxLanes(ordered);
    }

    /// <summary>The boxes.</summary>
    internal IReadOnlyList<FixtureBox> Boxes => boxes;

    /// <summary>Those that come within reach of a line on the plan.</summary>
    internal IEnumerable<FixtureBox> Near(Point2 from, Point2 to, double reachMetres)
    {
        int[] candidates = new int[16];
        int count = tree.Query(from, to, ref candidates, reachMetres);
        return candidates.Take(count).Select(i => boxes[i]);
    }

    /// <summary>Adds what the line crosses.</summary>
    internal void Trace(Point3 from, Point3 to, TraceBuffer buffer)
    {
        double whole = from.DistanceTo(to);
        int count = tree.Query(from.Plan, to.Plan, ref buffer.Candidates);
        for (int c = 0; c < count; c++)
        {
            FixtureBox box = boxes[buffer.Candidates[c]];
            if (!box.Pierce(from, to, out BoxPassage passage))
            {
                continue;
            }

            if (!box.IsShell)
            {
                double inside = (Math.Min(passage.Leave, 1) - Math.Max(passage.Enter, 0)) * whole;
                double share = box.BulkThickness is double thickness ? inside / thickness : 1;
                bool starts = passage.Enter > 0;
                Add(
                    buffer,
                    box,
                    box.Material,
                    starts ? passage.Enter : passage.Leave,
                    starts ? passage.EnterSide : passage.LeaveSide,
                    starts ? passage.EnterCos : passage.LeaveCos,
                    share);
                continue;
            }

            // An end on a panel, such as a console that stands on the bottom of its cabinet, has not gone through it.
            int entered = box.PanelOn(passage.EnterSide), left = box.PanelOn(passage.LeaveSide);
            if (passage.Enter * whole > GeometryTolerances.SlackMetres && entered != FixtureBox.Open)
            {
                Add(buffer, box, entered, passage.Enter, passage.EnterSide, passage.EnterCos, 1);
            }

            if ((1 - passage.Leave) * whole > GeometryTolerances.SlackMetres && left != FixtureBox.Open)
            {
                Add(buffer, box, left, passage.Leave, passage.LeaveSide, passage.LeaveCos, 1);
            }
        }
    }

    /// <summary>Adds the upright pieces in the ray's front.</summary>
    internal void Gather(in Ray ray, in Fold fold, TraceBuffer buffer)
    {
        (double least, double greatest) = fold.Heights(ray.From.Z, ray.To.Z);
        (Point2 from, Point2 to) = fold.Part(ray);
        Point2 legFrom = ray.PointAt(ray.Start).Plan, legTo = ray.PointAt(ray.End).Plan, rayFrom = ray.From.Plan;
        int count = tree.QueryGroups(from, to, ref buffer.Candidates, ray.ReachMetres);
        for (int c = 0; c < count; c += 2)
        {
            int group = buffer.Candidates[c];
            uint met = lanes.MayMeet(group, ray, least, greatest) & (uint)buffer.Candidates[c + 1], shells = met & lanes.Shells(group);
            uint around = lanes.Near(group, legFrom) | lanes.Near(group, legTo) | lanes.Near(group, rayFrom);
            for (uint solids = met & ~shells; solids != 0; solids &= solids - 1)
            {
                int lane = BitOperations.TrailingZeroCount(solids);
                BoxFront.GatherSolid(ordered[(group * PlanPanels.Lanes) + lane], ray, fold, least, greatest, (around >> lane & 1) != 0, buffer);
            }

            for (; shells != 0; shells &= shells - 1)
            {
                ShellFront.Gather(ordered[(group * PlanPanels.Lanes) + BitOperations.TrailingZeroCount(shells)], ray, fold, least, greatest, buffer);
            }
        }
    }

    /// <summary>Adds the level plates a leg passes through, but for those in the front of a ray that its uprights are in.</summary>
    internal void GatherPlates(in Ray leg, in Ray ray, in Fold fold, TraceBuffer buffer)
    {
        double start = leg.HeightAt(leg.Start), end = leg.HeightAt(leg.End);
        if (!MayPassPlate(Math.Min(start, end), Math.Max(start, end)))
        {
            return;
        }

        Point2 from = leg.PointAt(leg.Start).Plan, to = leg.PointAt(leg.End).Plan;
        int count = tree.Query(from, to, ref buffer.Candidates, leg.ReachMetres);
        for (int c = 0; c < count; c++)
        {
            FixtureBox box = boxes[buffer.Candidates[c]];
            if (box.IsShell)
            {
                ShellFront.GatherPlates(box, leg, ray, fold, buffer);
            }
        }
    }

    // A leg that does not reach the height of any lid or underside passes none.
    private bool MayPassPlate(double least, double greatest)
    {
        foreach (double height in plateHeights)
        {
            if (height >= least - GeometryTolerances.SlackMetres && height <= greatest + GeometryTolerances.SlackMetres)
            {
                return true;
            }
        }

        return false;
    }

    private static void Add(TraceBuffer buffer, FixtureBox box, int material, double along, BoxSides side, double cosine, double share)
    {
        if (box.IsBody && HasMet(buffer, box.Name))
        {
            return; // torso and head are one player
        }

        ref Hit hit = ref buffer.Next();
        hit.Along = Math.Clamp(along, 0, 1);
        hit.Name = box.Name;
        hit.Material = material;
        hit.Level = box.Level;
        hit.Kind = box.IsBody ? ObstacleKind.Player : ObstacleKind.Fixture;
        hit.CosIncidence = cosine;
        hit.IsSolid = !box.IsShell;
        hit.Share = share;
        hit.Mirror = box.MirrorOf(side);
    }

    private static bool HasMet(TraceBuffer buffer, int player)
    {
        foreach (ref readonly Hit hit in buffer.Hits)
        {
            if (hit.Kind == ObstacleKind.Player && hit.Name == player)
            {
                return true;
            }
        }

        return false;
    }
}
