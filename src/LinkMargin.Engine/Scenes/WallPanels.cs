using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>The walls of one level as straight lines cross them, in flat arrays, with their openings.</summary>
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
        low = [.. walls.Select(w => w.VerticalExtent.Low)];
        high = [.. walls.Select(w => w.VerticalExtent.High)];
        mirror = [.. walls.Select(w => w.Mirror)];
        material = [.. walls.Select(w => w.Material)];
        name = [.. walls.Select(w => w.Name)];
        openings = [.. walls.SelectMany(w => w.Openings.OrderBy(o => o.From))];
        firstOpening = new int[walls.Count + 1];
        for (int i = 0; i < walls.Count; i++)
        {
            firstOpening[i + 1] = firstOpening[i] + walls[i].Openings.Count;
        }

        tree = new PlanTree([.. walls.Select(w => PlanBox.Round(w.Start, w.End))]);
    }

    /// <summary>
    /// Adds what the line crosses. Edges count, so at a joint both walls are hit, and at a jamb both the wall and what fills
    /// the opening; the tracer keeps one.
    /// </summary>
    /// <param name="from">Its start.</param>
    /// <param name="to">Its end.</param>
    /// <param name="around">These walls sorted around its start; null where few lines start from there.</param>
    /// <param name="buffer">The thread's own.</param>
    internal void Trace(Point3 from, Point3 to, WallsAround? around, TraceBuffer buffer)
    {
        double dx = to.X - from.X, dy = to.Y - from.Y, dz = to.Z - from.Z;
        double run = Math.Sqrt((dx * dx) + (dy * dy));
        if (run <= GeometryTolerances.SlackMetres)
        {
            return; // straight up or down: it crosses no wall
        }

        double whole = Math.Sqrt((run * run) + (dz * dz));
        double slack = GeometryTolerances.SlackMetres / run;
        int count = around?.Find(to, ref buffer.Candidates) ?? tree.Query(from.Plan, to.Plan, ref buffer.Candidates);
        for (int c = 0; c < count; c++)
        {
            int i = buffer.Candidates[c];
            double ex = alongX[i], ey = alongY[i];
            double turn = (dx * ey) - (dy * ex); // |line| |wall| sin(angle between them)
            if (Math.Abs(turn) <= GeometryTolerances.ParallelSine * run * length[i])
            {
                continue;
            }

            double wx = startX[i] - from.X, wy = startY[i] - from.Y;
            double t = ((wx * ey) - (wy * ex)) / turn;
            double u = ((wx * dy) - (wy * dx)) / turn * length[i];
            double z = from.Z + (Math.Clamp(t, 0, 1) * dz);
            if (t < -slack || t > 1 + slack
                || u < -GeometryTolerances.SlackMetres || u > length[i] + GeometryTolerances.SlackMetres
                || z < low[i] - GeometryTolerances.SlackMetres || z > high[i] + GeometryTolerances.SlackMetres)
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

    /// <summary>The walls sorted around a place.</summary>
    internal WallsAround Around(Point3 from) => new(
        from,
        [.. Enumerable.Range(0, length.Length).Select(i => new WallSeen(
            new Point2(startX[i] - from.X, startY[i] - from.Y), new Point2(alongX[i], alongY[i]), length[i], low[i], high[i]))]);

    // Adds what is slightly to each side, above and below, but never beyond the wall.
    private void AddAllRound(TraceBuffer buffer, int wall, double u, double z, double along, double cosine)
    {
        const double Step = 2 * GeometryTolerances.SlackMetres;
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
        hit.IsSolid = false;
        hit.Share = 1;
        hit.Mirror = mirror[wall];
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
            if (openings[o].Reaches(u, z, GeometryTolerances.SlackMetres) && !openings[o].Reaches(u, z, -GeometryTolerances.SlackMetres))
            {
                return true;
            }
        }

        return false;
    }
}

/// <summary>One wall on its way into a scene's arrays: heights above the lowest floor, names and materials by number.</summary>
/// <param name="Start">One end.</param>
/// <param name="End">The other end.</param>
/// <param name="VerticalExtent">The heights it stands between.</param>
/// <param name="Mirror">The mirror it is part of, by number.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Openings">Its openings, by their place along it.</param>
internal sealed record WallPanel(
    Point2 Start, Point2 End, VerticalExtent VerticalExtent, int Mirror, int Material, int Name, IReadOnlyList<OpeningPanel> Openings);
