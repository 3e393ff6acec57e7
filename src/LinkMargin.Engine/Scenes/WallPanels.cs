using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Scenes;

/// <summary>The walls of one level in flat arrays, with their openings.</summary>
internal sealed class WallPanels
{
    private readonly PlanTree tree;
    private readonly double[] startX;
    private readonly double[] startY;
    private readonly double[] alongX;
    private readonly double[] alongY;
    private readonly double[] length;
    private readonly double[] low;
    private readonly double[] high;
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
        material = [.. walls.Select(w => w.Material)];
        name = [.. walls.Select(w => w.Name)];
        openings = [.. walls.SelectMany(w => w.Openings)];
        firstOpening = new int[walls.Count + 1];
        for (int i = 0; i < walls.Count; i++)
        {
            firstOpening[i + 1] = firstOpening[i] + walls[i].Openings.Count;
        }

        tree = new PlanTree([.. walls.Select(w => new PlanBox(
            Math.Min(w.Start.X, w.End.X), Math.Min(w.Start.Y, w.End.Y), Math.Max(w.Start.X, w.End.X), Math.Max(w.Start.Y, w.End.Y)))]);
    }

    /// <summary>Adds what the line meets. Ends count, so at a joint both walls are hit; the tracer keeps one.</summary>
    internal void Trace(Point3 from, Point3 to, TraceBuffer buffer)
    {
        double dx = to.X - from.X, dy = to.Y - from.Y, dz = to.Z - from.Z;
        double run = Math.Sqrt((dx * dx) + (dy * dy));
        if (run == 0)
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
            double z = from.Z + (t * dz);
            if (t < -slack || t > 1 + slack
                || u < -Touching.SlackMetres || u > length[i] + Touching.SlackMetres
                || z < low[i] || z >= high[i])
            {
                continue;
            }

            int met = material[i], called = name[i];
            ObstacleKind kind = ObstacleKind.Wall;
            if (OpeningAt(i, u, z) is int o && o >= 0)
            {
                met = openings[o].Filling;
                called = openings[o].Name;
                kind = ObstacleKind.Opening;
                if (met < 0)
                {
                    continue;
                }
            }

            ref Hit hit = ref buffer.Next();
            hit.Along = t;
            hit.Name = called;
            hit.Material = met;
            hit.Level = level;
            hit.Kind = kind;
            hit.AtEnd = u <= Touching.SlackMetres || u >= length[i] - Touching.SlackMetres;
            hit.CosIncidence = Math.Min(1, Math.Abs(turn) / (length[i] * whole));
            hit.Share = 1;
        }
    }

    private int OpeningAt(int wall, double u, double z)
    {
        for (int o = firstOpening[wall]; o < firstOpening[wall + 1]; o++)
        {
            OpeningPanel opening = openings[o];
            if (u >= opening.From && u <= opening.To && z >= opening.Low && z < opening.High)
            {
                return o;
            }
        }

        return -1;
    }
}
