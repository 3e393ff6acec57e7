using System.Runtime.Intrinsics;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>One fixture, laid out for tracing lines through it.</summary>
internal sealed class FixtureBox
{
    private readonly Point2 centre;
    private readonly double cos;
    private readonly double sin;
    private readonly double halfX;
    private readonly double halfY;
    private readonly Point2[] corners; // south-west, south-east, north-east, north-west, before turning
    private readonly int firstMirror; // of its four upright sides, in PanelSides' order; −1 where it is too small for one
    private readonly double low;
    private readonly double high;
    private readonly int[] panels; // of a shell's sides in AllSides' order, by number
    private readonly double[] panelLossesDb;

    /// <summary>Lays out a fixture.</summary>
    /// <param name="fixture">The fixture.</param>
    /// <param name="level">The level it stands on.</param>
    /// <param name="numberOf">Gives the number of a material.</param>
    /// <param name="name">The number of its name.</param>
    /// <param name="firstMirror">The number of its first upright side as a mirror; −1 where it is too small for one.</param>
    /// <param name="firstPlane">The first of the planes it takes up.</param>
    internal FixtureBox(Fixture fixture, Level level, Func<Material, int> numberOf, int name, int firstMirror, int firstPlane)
    {
        double turn = double.DegreesToRadians(fixture.TurnDegrees);
        centre = fixture.Centre;
        cos = Math.Cos(turn);
        sin = Math.Sin(turn);
        halfX = fixture.SizeX / 2;
        halfY = fixture.SizeY / 2;
        RadiusMetres = double.Hypot(halfX, halfY);
        low = level.ElevationMetres + fixture.FromMetres;
        high = level.ElevationMetres + fixture.ToMetres;
        VerticalExtent = VerticalExtent.Of(low, high, level.ElevationMetres, level.CeilingMetres);
        this.firstMirror = firstMirror;
        FirstPlane = firstPlane;
        Level = fixture.LevelIndex;
        Material = numberOf(fixture.Material);
        Name = name;
        IsShell = fixture.IsShell;
        panels = [.. AllSides.ToArray().Select(side => fixture.PanelOn(side) is { } panel ? numberOf(panel) : Open)];
        panelLossesDb = [.. AllSides.ToArray().Select(side => fixture.PanelOn(side)?.LossDb ?? double.NegativeInfinity)];
        IsBody = fixture.Seat is not null;
        BulkThickness = fixture.Material.Form == LossForm.Bulk ? fixture.Material.ThicknessMetres : null;
        double reachX = (Math.Abs(cos) * halfX) + (Math.Abs(sin) * halfY);
        double reachY = (Math.Abs(sin) * halfX) + (Math.Abs(cos) * halfY);
        corners = [.. new[] { (-1, -1), (1, -1), (1, 1), (-1, 1) }.Select(c => new Point2(
            centre.X + (c.Item1 * halfX * cos) - (c.Item2 * halfY * sin),
            centre.Y + (c.Item1 * halfX * sin) + (c.Item2 * halfY * cos)))];
        CornersX = Vector256.Create(corners[0].X, corners[1].X, corners[2].X, corners[3].X);
        CornersY = Vector256.Create(corners[0].Y, corners[1].Y, corners[2].Y, corners[3].Y);
        AlongX = Vector256.Create(corners[1].X, corners[2].X, corners[3].X, corners[0].X) - CornersX;
        AlongY = Vector256.Create(corners[1].Y, corners[2].Y, corners[3].Y, corners[0].Y) - CornersY;
        Bounds = new PlanBox(centre.X - reachX, centre.Y - reachY, centre.X + reachX, centre.Y + reachY);
    }

    /// <summary>How many planes one may take up as an obstacle.</summary>
    internal const int Planes = 5;

    /// <summary>The order in which upright sides are numbered: panel i runs from corner i to corner i + 1.</summary>
    internal static ReadOnlySpan<BoxSides> PanelSides => [BoxSides.South, BoxSides.East, BoxSides.North, BoxSides.West];

    /// <summary>The upright sides, then underside and lid.</summary>
    internal static ReadOnlySpan<BoxSides> AllSides =>
        [BoxSides.South, BoxSides.East, BoxSides.North, BoxSides.West, BoxSides.Bottom, BoxSides.Top];

    /// <summary>The material number of a side of a shell without a panel.</summary>
    internal const int Open = -1;

    /// <summary>Corners on the plan: south-west, south-east, north-east, north-west, before turning.</summary>
    internal ReadOnlySpan<Point2> Corners => corners;

    /// <summary>East of the corners, metres.</summary>
    internal Vector256<double> CornersX { get; }

    /// <summary>North of the corners, metres.</summary>
    internal Vector256<double> CornersY { get; }

    /// <summary>East from each corner to the next, metres.</summary>
    internal Vector256<double> AlongX { get; }

    /// <summary>North from each corner to the next, metres.</summary>
    internal Vector256<double> AlongY { get; }

    /// <summary>The heights it stands between.</summary>
    internal VerticalExtent VerticalExtent { get; }

    /// <summary>The planes it takes up as an obstacle: itself, or its upright sides in PanelSides' order, from here on.</summary>
    internal int FirstPlane { get; }

    /// <summary>The plane of the lid or underside that a leg leaves by.</summary>
    internal int LevelPlane => FirstPlane + Planes - 1;

    internal int Level { get; }

    internal int Material { get; }

    internal int Name { get; }

    internal bool IsShell { get; }

    /// <summary>Whether it is a part of a player's body.</summary>
    internal bool IsBody { get; }

    /// <summary>Middle of its footprint.</summary>
    internal Point2 Centre => centre;

    /// <summary>From its middle to its corners on the plan, metres.</summary>
    internal double RadiusMetres { get; }

    /// <summary>Its whole surface, metres squared.</summary>
    internal double SurfaceSquareMetres => (4 * (halfX + halfY) * (high - low)) + (8 * halfX * halfY);

    /// <summary>Its volume, cubic metres.</summary>
    internal double CubicMetres => 4 * halfX * halfY * (high - low);

    /// <summary>Mean length of all lines through it: 4 V / S for any convex body (Cauchy), metres.</summary>
    internal double MeanChordMetres => 4 * CubicMetres / SurfaceSquareMetres;

    /// <summary>Thickness the loss belongs to, where loss grows with the length inside; null elsewhere.</summary>
    internal double? BulkThickness { get; }

    internal PlanBox Bounds { get; }

    /// <summary>Whether another fixture is of the same size in the same place, whatever it is made of.</summary>
    internal bool TakesUpTheSameSpaceAs(FixtureBox other) =>
        (centre, cos, sin, halfX, halfY, low, high) == (other.centre, other.cos, other.sin, other.halfX, other.halfY, other.low, other.high);

    /// <summary>Whether any part of the line lies inside, and where.</summary>
    internal bool Pierce(Point3 from, Point3 to, out BoxPassage passage)
    {
        // Into the box's own axes.
        double fx = from.X - centre.X, fy = from.Y - centre.Y;
        double gx = to.X - from.X, gy = to.Y - from.Y, gz = to.Z - from.Z;
        double x = (cos * fx) + (sin * fy), y = (cos * fy) - (sin * fx);
        double dx = (cos * gx) + (sin * gy), dy = (cos * gy) - (sin * gx);

        double whole = Math.Sqrt((gx * gx) + (gy * gy) + (gz * gz));
        passage = new BoxPassage { Enter = double.NegativeInfinity, Leave = double.PositiveInfinity };
        if (!new BoxSlab(-halfX, halfX, BoxSides.West, BoxSides.East).Narrow(ref passage, x, dx, whole)
            || !new BoxSlab(-halfY, halfY, BoxSides.South, BoxSides.North).Narrow(ref passage, y, dy, whole)
            || !new BoxSlab(low, high, BoxSides.Bottom, BoxSides.Top).Narrow(ref passage, from.Z, gz, whole)
            || (Math.Min(passage.Leave, 1) - Math.Max(passage.Enter, 0)) * whole <= GeometryTolerances.SlackMetres)
        {
            return false;
        }

        passage.EnterCos = CosineAt(passage.EnterSide);
        passage.LeaveCos = CosineAt(passage.LeaveSide);
        return true;

        double CosineAt(BoxSides sides) => Math.Abs(
            (sides & (BoxSides.West | BoxSides.East)) != 0 ? dx
            : (sides & (BoxSides.South | BoxSides.North)) != 0 ? dy
            : gz) / whole;
    }

    /// <summary>Unit normal of an upright side, away from the box.</summary>
    internal Point2 OutwardOf(int side) => PanelSides[side] switch
    {
        BoxSides.South => new(sin, -cos),
        BoxSides.East => new(cos, sin),
        BoxSides.North => new(-sin, cos),
        _ => new(-cos, -sin),
    };

    /// <summary>How far a plan point is behind an upright side, towards the box's middle and beyond, metres.</summary>
    internal double DepthBehind(int side, Point2 at) =>
        (PanelSides[side] is BoxSides.South or BoxSides.North ? halfY : halfX) - Point2.Dot(at - centre, OutwardOf(side));

    /// <summary>Where an endless line on the plan enters and leaves the footprint, metres from a place on it; nothing where it passes beside it.</summary>
    internal (double Enter, double Leave)? ChordOf(Point2 from, Point2 direction)
    {
        double x = (cos * (from.X - centre.X)) + (sin * (from.Y - centre.Y)), y = (cos * (from.Y - centre.Y)) - (sin * (from.X - centre.X));
        double dx = (cos * direction.X) + (sin * direction.Y), dy = (cos * direction.Y) - (sin * direction.X);
        (double enterX, double leaveX) = Between(x, dx, halfX);
        (double enterY, double leaveY) = Between(y, dy, halfY);
        double enter = Math.Max(enterX, enterY), leave = Math.Min(leaveX, leaveY);
        return enter <= leave ? (enter, leave) : null;

        // Between two parallel sides; for a line along them all of it or nothing.
        static (double Enter, double Leave) Between(double at, double step, double half)
        {
            if (Math.Abs(step) <= GeometryTolerances.ParallelSine)
            {
                double endless = Math.Abs(at) <= half + GeometryTolerances.SlackMetres ? double.PositiveInfinity : double.NegativeInfinity;
                return (-endless, endless);
            }

            double middle = -at / step, across = half / Math.Abs(step);
            return (middle - across, middle + across);
        }
    }

    /// <summary>Its middle along a direction of unit length from the plan's origin, and how far it reaches from there either way, metres.</summary>
    internal (double Middle, double Half) Along(Point3 direction)
    {
        double east = Math.Abs((cos * direction.X) + (sin * direction.Y)), north = Math.Abs((cos * direction.Y) - (sin * direction.X));
        double middle = (direction.X * centre.X) + (direction.Y * centre.Y) + (direction.Z * (low + high) / 2);
        return (middle, (east * halfX) + (north * halfY) + (Math.Abs(direction.Z) * (high - low) / 2));
    }

    /// <summary>Whether a direction of unit length on the plan is parallel to a pair of its upright sides, within an angle of a given sine.</summary>
    internal bool IsAlong(Point3 direction, double sine)
    {
        double east = Math.Abs((cos * direction.X) + (sin * direction.Y)), north = Math.Abs((cos * direction.Y) - (sin * direction.X));
        return Math.Min(east, north) <= sine;
    }

    /// <summary>Whether it stands entirely inside another.</summary>
    internal bool IsWithin(FixtureBox other) =>
        other != this && low >= other.low - GeometryTolerances.SlackMetres && high <= other.high + GeometryTolerances.SlackMetres
        && CubicMetres < other.CubicMetres
        && Array.TrueForAll(corners, other.Covers);

    /// <summary>Whether an upright side stands more across a ray on the plan than along it.</summary>
    internal bool IsAcross(in Ray ray, int side)
    {
        double along = Math.Abs((cos * ray.EastX) + (sin * ray.NorthY)), across = Math.Abs((cos * ray.NorthY) - (sin * ray.EastX));
        return PanelSides[side] is BoxSides.East or BoxSides.West == along >= across;
    }

    /// <summary>
    /// What a line crosses on one side of a shell, or on several where it runs through their common edge: the panel with the most
    /// loss; <see cref="Open"/> where none of them has one.
    /// </summary>
    internal int PanelOn(BoxSides sides)
    {
        int found = Open;
        double mostDb = double.NegativeInfinity;
        for (int i = 0; i < panels.Length; i++)
        {
            if ((sides & AllSides[i]) != 0 && panelLossesDb[i] > mostDb)
            {
                (found, mostDb) = (panels[i], panelLossesDb[i]);
            }
        }

        return found;
    }

    /// <summary>The mirror that a side is, by number; −1 for none.</summary>
    internal int MirrorOf(BoxSides side)
    {
        int panel = PanelSides.IndexOf(side);
        return firstMirror < 0 || panel < 0 ? -1 : firstMirror + panel;
    }

    /// <summary>Whether its upright sides are mirrors.</summary>
    internal bool HasMirrors => firstMirror >= 0;

    /// <summary>Whether a mirror is one of its sides.</summary>
    internal bool HasMirror(int mirror) => firstMirror >= 0 && mirror >= firstMirror && mirror < firstMirror + corners.Length;

    /// <summary>Whether a place lies inside; its faces are outside.</summary>
    internal bool Holds(Point3 p) => p.Z > low + GeometryTolerances.SlackMetres && p.Z < high - GeometryTolerances.SlackMetres
        && DepthOf(p.Plan) > GeometryTolerances.SlackMetres;

    /// <summary>Length of a line through the middle of the box in a ray's direction, metres.</summary>
    internal double ChordMetres(in Ray ray)
    {
        double rise = (ray.To.Z - ray.From.Z) / ray.LengthMetres;
        double east = ray.EastX * ray.CosSlope, north = ray.NorthY * ray.CosSlope;
        double dx = Math.Abs((cos * east) + (sin * north)), dy = Math.Abs((cos * north) - (sin * east));
        return Math.Min(2 * halfX / dx, Math.Min(2 * halfY / dy, (high - low) / Math.Abs(rise)));
    }

    /// <summary>Whether a plan point lies within the footprint or touches it.</summary>
    internal bool Covers(Point2 at)
    {
        double x = at.X - centre.X, y = at.Y - centre.Y, farthest = RadiusMetres + GeometryTolerances.SlackMetres;
        return (x * x) + (y * y) <= farthest * farthest && DepthOf(at) >= -GeometryTolerances.SlackMetres;
    }

    /// <summary>How far inside the footprint a plan point is, metres; below 0 outside.</summary>
    internal double DepthOf(Point2 at)
    {
        double x = at.X - centre.X, y = at.Y - centre.Y;
        double inX = halfX - Math.Abs((cos * x) + (sin * y)), inY = halfY - Math.Abs((cos * y) - (sin * x));
        return inX < 0 && inY < 0 ? -double.Hypot(inX, inY) : Math.Min(inX, inY);
    }
}
