using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Propagation;

namespace LinkMargin.Engine.Scenes;

/// <summary>The walls of one level in flat arrays, with their openings.</summary>
internal sealed class WallPanels
{
    // An opening's edge this near to its wall's is no edge: the floor or ceiling is there.
    private const double SameEdgeMetres = 0.01;

    private readonly PlanTree tree;
    private readonly double[] startX;
    private readonly double[] startY;
    private readonly double[] alongX;
    private readonly double[] alongY;
    private readonly double[] length;
    private readonly double[] low;
    private readonly double[] high;
    private readonly bool[] isFull;
    private readonly int[] mirror;
    private readonly int[] material;
    private readonly int[] name;
    private readonly int[] firstOpening; // one longer than the walls: wall i has openings firstOpening[i]..firstOpening[i+1]-1
    private readonly OpeningPanel[] openings;
    private readonly int level;

    internal WallPanels(int level, IReadOnlyList<WallPanel> walls)
    {
        this.level = level;
        startX = [.. walls.Select(w => w.Start.X)];
        startY = [.. walls.Select(w => w.Start.Y)];
        alongX = [.. walls.Select(w => w.End.X - w.Start.X)];
        alongY = [.. walls.Select(w => w.End.Y - w.Start.Y)];
        length = [.. walls.Select(w => w.Start.DistanceTo(w.End))];
        low = [.. walls.Select(w => w.Low)];
        high = [.. walls.Select(w => w.High)];
        isFull = [.. walls.Select(w => w.IsFull)];
        mirror = [.. walls.Select(w => w.Mirror)];
        material = [.. walls.Select(w => w.Material)];
        name = [.. walls.Select(w => w.Name)];
        openings = [.. walls.SelectMany(w => w.Openings.OrderBy(o => o.From))]; // a front takes them from end to end
        firstOpening = new int[walls.Count + 1];
        for (int i = 0; i < walls.Count; i++)
        {
            firstOpening[i + 1] = firstOpening[i] + walls[i].Openings.Count;
        }

        tree = new PlanTree([.. walls.Select(w => new PlanBox(
            Math.Min(w.Start.X, w.End.X), Math.Min(w.Start.Y, w.End.Y), Math.Max(w.Start.X, w.End.X), Math.Max(w.Start.Y, w.End.Y)))]);
    }

    /// <summary>
    /// Adds what the line meets. Edges count, so at a joint both walls are hit, and at a jamb both the wall and what fills
    /// the opening; the tracer keeps one.
    /// </summary>
    internal void Trace(Point3 from, Point3 to, TraceBuffer buffer)
    {
        double dx = to.X - from.X, dy = to.Y - from.Y, dz = to.Z - from.Z;
        double run = Math.Sqrt((dx * dx) + (dy * dy));
        if (run <= Touching.SlackMetres)
        {
            return; // straight up or down: in no wall's way
        }

        double whole = Math.Sqrt((run * run) + (dz * dz));
        double slack = Touching.SlackMetres / run;
        int count = tree.Query(from.Plan, to.Plan, ref buffer.Candidates);
        for (int c = 0; c < count; c++)
        {
            int i = buffer.Candidates[c];
            double ex = alongX[i], ey = alongY[i];
            double turn = (dx * ey) - (dy * ex); // |line| |wall| sin(angle between them)
            if (Math.Abs(turn) <= Touching.ParallelSine * run * length[i])
            {
                continue;
            }

            double wx = startX[i] - from.X, wy = startY[i] - from.Y;
            double t = ((wx * ey) - (wy * ex)) / turn;
            double u = ((wx * dy) - (wy * dx)) / turn * length[i];
            double z = from.Z + (Math.Clamp(t, 0, 1) * dz);
            if (t < -slack || t > 1 + slack
                || u < -Touching.SlackMetres || u > length[i] + Touching.SlackMetres
                || z < low[i] - Touching.SlackMetres || z > high[i] + Touching.SlackMetres)
            {
                continue;
            }

            t = Math.Clamp(t, 0, 1);
            double cosine = Math.Min(1, Math.Abs(turn) / (length[i] * whole));
            if (IsAtAnOpeningsEdge(i, u, z))
            {
                AddAllRound(buffer, i, u, z, t, cosine);
            }
            else
            {
                Add(buffer, i, OpeningAt(i, u, z), t, cosine);
            }
        }
    }

    // What lies a little to each side, above and below, but never beyond the wall.
    private void AddAllRound(TraceBuffer buffer, int wall, double u, double z, double along, double cosine)
    {
        const double Step = 2 * Touching.SlackMetres;
        double left = Math.Max(u - Step, Step), right = Math.Min(u + Step, length[wall] - Step);
        double below = Math.Max(z - Step, low[wall] + Step), above = Math.Min(z + Step, high[wall] - Step);
        Add(buffer, wall, OpeningAt(wall, left, below), along, cosine);
        Add(buffer, wall, OpeningAt(wall, left, above), along, cosine);
        Add(buffer, wall, OpeningAt(wall, right, below), along, cosine);
        Add(buffer, wall, OpeningAt(wall, right, above), along, cosine);
    }

    private void Add(TraceBuffer buffer, int wall, int opening, double along, double cosine)
    {
        int met = opening < 0 ? material[wall] : openings[opening].Filling;
        if (met < 0)
        {
            return;
        }

        ref Hit hit = ref buffer.Next();
        hit.Along = along;
        hit.Name = opening < 0 ? name[wall] : openings[opening].Name;
        hit.Material = met;
        hit.Level = level;
        hit.Kind = opening < 0 ? ObstacleKind.Wall : ObstacleKind.Opening;
        hit.CosIncidence = cosine;
        hit.Share = 1;
        hit.Mirror = mirror[wall];
        hit.NormalX = -alongY[wall] / length[wall];
        hit.NormalY = alongX[wall] / length[wall];
    }

    /// <summary>
    /// Adds the pieces the ray's front meets, each opening apart from the wall round it; walls of one mirror are left out.
    /// </summary>
    internal void Gather(in Ray ray, TraceBuffer buffer, int exceptMirror)
    {
        Point3 from = ray.PointAt(ray.Start), to = ray.PointAt(ray.End);
        int count = tree.Query(from.Plan, to.Plan, ref buffer.Candidates, ray.ReachMetres);
        for (int c = 0; c < count; c++)
        {
            int i = buffer.Candidates[c];
            if (mirror[i] == exceptMirror)
            {
                continue;
            }

            var front = new PanelFront(in ray, startX[i], startY[i], alongX[i], alongY[i]);
            if (!front.IsMet)
            {
                continue;
            }

            double cover = isFull[i] ? front.Within(low[i], high[i]) : front.Cover(low[i], high[i]);
            if (cover < Piece.LeastCover)
            {
                continue;
            }

            double turn = Math.Abs((ray.EastX * alongY[i]) - (ray.NorthY * alongX[i]));
            double cos = Math.Min(1, turn * ray.CosSlope / length[i]);
            double u = front.First;
            for (int o = firstOpening[i]; o < firstOpening[i + 1]; o++)
            {
                OpeningPanel opening = openings[o];
                double start = Math.Clamp(opening.From / length[i], u, front.Last);
                double end = Math.Clamp(opening.To / length[i], start, front.Last);
                AddPiece(buffer, front, u, start, i, cos, cover, material[i], 1);
                double height = front.Cover(
                    opening.Low <= low[i] + SameEdgeMetres ? double.NegativeInfinity : opening.Low,
                    opening.High >= high[i] - SameEdgeMetres ? double.PositiveInfinity : opening.High);
                AddPiece(buffer, front, start, end, i, cos, cover, opening.Filling, height);
                u = end;
            }

            AddPiece(buffer, front, u, front.Last, i, cos, cover, material[i], 1);
        }
    }

    // A full wall ends at floor and ceiling, where nothing passes: near them its loss fades in decibels, into that of the
    // wall above or below. A lower wall is passed over: near its top the front is shared between wall and air.
    private void AddPiece(
        TraceBuffer buffer, in PanelFront front, double u, double end, int wall, double cos, double wallCover, int filling, double share)
    {
        if (u >= end)
        {
            return;
        }

        double vStart = front.At(u), vEnd = front.At(end);
        double least = Math.Min(vStart, vEnd), greatest = Math.Max(vStart, vEnd);
        if (least > EdgeKernel.Reach || greatest < -EdgeKernel.Reach)
        {
            return;
        }

        ref Piece piece = ref buffer.NextPiece();
        piece.Low = least;
        piece.High = greatest;
        piece.Back = isFull[wall] ? material[wall] : -1;
        piece.Front = filling;
        piece.Cover = isFull[wall] ? share : wallCover;
        piece.Hold = isFull[wall] ? wallCover : 1;
        piece.CosIncidence = cos;
        piece.Share = 1;
        piece.IsRibs = false;
    }

    private int OpeningAt(int wall, double u, double z)
    {
        for (int o = firstOpening[wall]; o < firstOpening[wall + 1]; o++)
        {
            if (openings[o].Reaches(u, z, 0))
            {
                return o;
            }
        }

        return -1;
    }

    private bool IsAtAnOpeningsEdge(int wall, double u, double z)
    {
        for (int o = firstOpening[wall]; o < firstOpening[wall + 1]; o++)
        {
            if (openings[o].Reaches(u, z, Touching.SlackMetres) && !openings[o].Reaches(u, z, -Touching.SlackMetres))
            {
                return true;
            }
        }

        return false;
    }
}
