using System.Numerics;
using System.Runtime.Intrinsics;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// The walls of one level sorted around one place, so that a line from there tests only those in its direction, the near ones
/// first. Worth building where hundreds of lines start from one place, as those of a field do. A line meets what
/// <see cref="WallPanels.Trace"/> meets, by the same arithmetic, eight walls at a time.
/// </summary>
internal sealed class WallsAround
{
    private const int Lanes = 8;
    private const int Numbers = 8; // of one wall: see Row

    // Fine enough that a line meets most walls of its sector, few enough to stay in a processor's cache.
    private const int Sectors = 256;
    private const int Quarter = Sectors / 4;

    // A wall this close may be met in any direction, metres; farther ones, in a direction that is off by less than this.
    private const double AtHandMetres = 1e-3;
    private const double SlackTurns = 2 * GeometryTolerances.SlackMetres / AtHandMetres;

    private readonly Point3 from;
    private readonly double[] rows; // whole groups: the first numbers of eight walls, then the second ones, and so on
    private readonly int[] walls; // their numbers, in the same order
    private readonly double[] nearest; // by group, metres
    private readonly int[] firstGroups; // one longer than the sectors

    /// <summary>Sorts walls around a place.</summary>
    /// <param name="from">The place.</param>
    /// <param name="seen">The walls as it sees them, by number.</param>
    internal WallsAround(Point3 from, WallSeen[] seen)
    {
        this.from = from;
        int[] byDistance = [.. Enumerable.Range(0, seen.Length).Where(i => seen[i].LengthMetres > 0)];
        double[] distances = [.. byDistance.Select(i => seen[i].DistanceMetres)];
        Array.Sort(distances, byDistance);
        var members = new List<int>[Sectors]; // places in that order
        for (int s = 0; s < Sectors; s++)
        {
            members[s] = [];
        }

        for (int i = 0; i < byDistance.Length; i++)
        {
            (int first, int many) = SectorsOf(seen[byDistance[i]], distances[i]);
            for (int s = 0; s < many; s++)
            {
                members[(first + s) % Sectors].Add(i);
            }
        }

        firstGroups = new int[Sectors + 1];
        for (int s = 0; s < Sectors; s++)
        {
            firstGroups[s + 1] = firstGroups[s] + ((members[s].Count + Lanes - 1) / Lanes);
        }

        rows = new double[firstGroups[^1] * Lanes * Numbers];
        walls = new int[firstGroups[^1] * Lanes];
        nearest = new double[firstGroups[^1]];
        for (int s = 0; s < Sectors; s++)
        {
            for (int m = 0; m < members[s].Count; m++)
            {
                int i = members[s][m], group = firstGroups[s] + (m / Lanes), lane = m % Lanes;
                walls[(group * Lanes) + lane] = byDistance[i];
                nearest[group] = lane == 0 ? distances[i] : nearest[group];
                Write(rows.AsSpan((group * Lanes * Numbers) + lane), seen[byDistance[i]]);
            }
        }
    }

    /// <summary>Writes the numbers of the walls that the line to a place meets, near ones mostly first.</summary>
    /// <param name="to">The place.</param>
    /// <param name="found">Filled from its start; grown when too small.</param>
    /// <returns>How many there are.</returns>
    internal int Find(Point3 to, ref int[] found)
    {
        double dx = to.X - from.X, dy = to.Y - from.Y, dz = to.Z - from.Z;
        double run = Math.Sqrt((dx * dx) + (dy * dy));
        if (run <= GeometryTolerances.SlackMetres)
        {
            return 0; // straight up or down: it crosses no wall
        }

        var line = new Line(from.Z, dx, dy, dz, run);
        int count = 0, sector = SectorOf(dx, dy);
        for (int group = firstGroups[sector]; group < firstGroups[sector + 1] && nearest[group] <= run + GeometryTolerances.SlackMetres; group++)
        {
            ulong met = line.Passes(ref rows[group * Lanes * Numbers]);
            if (count + Lanes > found.Length)
            {
                Array.Resize(ref found, 2 * (count + Lanes));
            }

            // Writing two at a time, and perhaps one too many, is quicker than testing each.
            int many = BitOperations.PopCount(met);
            for (int i = 0; i < many; i += 2)
            {
                found[count + i] = walls[(group * Lanes) + (BitOperations.TrailingZeroCount(met) & (Lanes - 1))];
                met &= met - 1;
                found[count + i + 1] = walls[(group * Lanes) + (BitOperations.TrailingZeroCount(met) & (Lanes - 1))];
                met &= met - 1;
            }

            count += many;
        }

        return count;
    }

    // A direction as a number from 0 to 4 that grows all the way round from east: a quarter turn is 1.
    private static double Turns(double x, double y)
    {
        double part = y / (Math.Abs(x) + Math.Abs(y));
        return x < 0 ? 2 - part : y < 0 ? 4 + part : part;
    }

    // The sector of a direction by the same measure, without a branch to mispredict; one on a border may fall to either side.
    private static int SectorOf(double x, double y)
    {
        double part = y / (Math.Abs(x) + Math.Abs(y));
        int steps = (int)((part + 1) * Quarter) - Quarter, left = (2 * Quarter) - 1 - steps;
        return x < 0 ? left : steps & (Sectors - 1);
    }

    // The sectors in which a wall is seen: the first, and how many from there on.
    private static (int First, int Many) SectorsOf(in WallSeen wall, double distanceMetres)
    {
        if (distanceMetres <= AtHandMetres)
        {
            return (0, Sectors);
        }

        Point2 start = wall.Start, end = start + wall.Along;
        double one = Turns(start.X, start.Y), other = Turns(end.X, end.Y);
        (double first, double last) = Point2.Cross(start, end) >= 0 ? (one, other) : (other, one);
        double width = (last - first + 4) % 4;
        width = width > 2.5 ? 0 : width; // seen end on, in whichever order rounding has its ends
        double from = (first - SlackTurns) * Quarter, to = (first + width + SlackTurns) * Quarter;
        int at = (int)Math.Floor(from);
        return ((at + Sectors) % Sectors, (int)Math.Floor(to) - at + 1);
    }

    private static void Write(Span<double> row, in WallSeen wall)
    {
        row[Lanes * Row.AlongX] = wall.Along.X;
        row[Lanes * Row.AlongY] = wall.Along.Y;
        row[Lanes * Row.StartX] = wall.Start.X;
        row[Lanes * Row.StartY] = wall.Start.Y;
        row[Lanes * Row.Cross] = Point2.Cross(wall.Start, wall.Along);
        row[Lanes * Row.Length] = wall.LengthMetres;
        row[Lanes * Row.Low] = wall.Low - GeometryTolerances.SlackMetres;
        row[Lanes * Row.High] = wall.High + GeometryTolerances.SlackMetres;
    }

    // The numbers of a wall as the place sees it.
    private static class Row
    {
        internal const int AlongX = 0;
        internal const int AlongY = 1;
        internal const int StartX = 2;
        internal const int StartY = 3;
        internal const int Cross = 4;
        internal const int Length = 5;
        internal const int Low = 6;
        internal const int High = 7;
    }

    private readonly struct Line(double height, double dx, double dy, double dz, double run)
    {
        private readonly double slack = GeometryTolerances.SlackMetres / run;
        private readonly double parallel = GeometryTolerances.ParallelSine * run;

        // Which of a group's walls it meets, a bit each.
        internal ulong Passes(ref double rows)
        {
            Vector512<double> ex = Load(ref rows, Row.AlongX), ey = Load(ref rows, Row.AlongY);
            Vector512<double> length = Load(ref rows, Row.Length);
            Vector512<double> turn = (dx * ey) - (dy * ex);
            Vector512<double> t = Load(ref rows, Row.Cross) / turn;
            Vector512<double> u = ((Load(ref rows, Row.StartX) * dy) - (Load(ref rows, Row.StartY) * dx)) / turn * length;
            Vector512<double> z = Vector512.Create(height)
                + (Vector512.Min(Vector512.Max(t, Vector512<double>.Zero), Vector512<double>.One) * dz);
            Vector512<double> met = Vector512.GreaterThan(Vector512.Abs(turn), parallel * length)
                & Vector512.GreaterThanOrEqual(t, Vector512.Create(-slack))
                & Vector512.LessThanOrEqual(t, Vector512.Create(1 + slack))
                & Vector512.GreaterThanOrEqual(u, Vector512.Create(-GeometryTolerances.SlackMetres))
                & Vector512.LessThanOrEqual(u, length + Vector512.Create(GeometryTolerances.SlackMetres))
                & Vector512.GreaterThanOrEqual(z, Load(ref rows, Row.Low))
                & Vector512.LessThanOrEqual(z, Load(ref rows, Row.High));
            return met.ExtractMostSignificantBits();
        }

        private static Vector512<double> Load(ref double rows, int number) =>
            Vector512.LoadUnsafe(ref rows, (nuint)(number * Lanes));
    }
}

/// <summary>A wall as seen from a place: where it starts from there and how it runs on the plan, its length, its heights, metres.</summary>
internal readonly record struct WallSeen(Point2 Start, Point2 Along, double LengthMetres, double Low, double High)
{
    /// <summary>How far away it is on the plan, metres.</summary>
    internal double DistanceMetres
    {
        get
        {
            double share = Math.Clamp(-Point2.Dot(Start, Along) / Point2.Dot(Along, Along), 0, 1);
            Point2 nearest = Start + (share * Along);
            return Math.Sqrt(Point2.Dot(nearest, nearest));
        }
    }
}
