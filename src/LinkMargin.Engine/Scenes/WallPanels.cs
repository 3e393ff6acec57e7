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
    private readonly Rise[] rise;
    private readonly (double From, double To)[] run;
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
        low = [.. walls.Select(w => w.Rise.Low)];
        high = [.. walls.Select(w => w.Rise.High)];
        rise = [.. walls.Select(w => w.Rise)];
        run = WallRuns.Of(walls);
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
    }

    /// <summary>
    /// Adds the pieces the ray's front meets, each opening apart from the wall round it; walls of the mirror itself are left out.
    /// </summary>
    internal void Gather(in Ray ray, in Fold fold, TraceBuffer buffer)
    {
        (double least, double greatest) = fold.Heights(ray.From.Z, ray.To.Z);
        (Point2 from, Point2 to) = fold.Part(ray);
        int count = tree.Query(from, to, ref buffer.Candidates, ray.ReachMetres);
        for (int c = 0; c < count; c++)
        {
            int i = buffer.Candidates[c];
            if ((mirror[i] == fold.Mirror && fold.Mirror >= 0) || !rise[i].IsMetBetween(least, greatest))
            {
                continue;
            }

            var front = new PanelFront(in ray, in fold, startX[i], startY[i], alongX[i], alongY[i], run[i].From, run[i].To);
            if (!front.IsMet)
            {
                continue;
            }

            double bottom = rise[i].BottomFor(least), top = rise[i].TopFor(greatest);
            double turn = Math.Abs((ray.EastX * alongY[i]) - (ray.NorthY * alongX[i]));
            var piece = new Piece { Plane = mirror[i], CosIncidence = Math.Min(1, turn * ray.CosSlope / length[i]), Share = 1 };
            double u = front.First;
            for (int o = firstOpening[i]; o < firstOpening[i + 1]; o++)
            {
                OpeningPanel opening = openings[o];
                double start = Math.Clamp(opening.From / length[i], u, front.Last);
                double end = Math.Clamp(opening.To / length[i], start, front.Last);
                double sill = opening.Low <= low[i] + Rise.SameMetres ? bottom : opening.Low;
                double head = opening.High >= high[i] - Rise.SameMetres ? top : opening.High;
                AddPieces(buffer, front, fold, piece, material[i], u, start, bottom, top);
                AddPieces(buffer, front, fold, piece, material[i], start, end, bottom, sill);
                AddPieces(buffer, front, fold, piece, opening.Filling, start, end, sill, head);
                AddPieces(buffer, front, fold, piece, material[i], start, end, head, top);
                u = end;
            }

            AddPieces(buffer, front, fold, piece, material[i], u, front.Last, bottom, top);
        }
    }

    // What stands between two shares of a wall and two heights, and its image in a floor or ceiling.
    private static void AddPieces(
        TraceBuffer buffer, in PanelFront front, in Fold fold, Piece piece, int filling, double u, double end, double bottom, double top)
    {
        if (filling < 0 || u >= end || bottom >= top || !front.TryBetween(u, end, out piece.Low, out piece.High))
        {
            return;
        }

        piece.Material = filling;
        front.Heights.Add(buffer, fold, piece, bottom, top);
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
