using System.Runtime.Intrinsics;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>Fixtures on the plan in flat arrays, eight to a group, for finding those that a ray's front may meet.</summary>
internal sealed class BoxLanes
{
    // Closer than this the rules of touching decide, metres.
    private const double ClearMetres = 1e-3;

    private readonly double[] centreX;
    private readonly double[] centreY;
    private readonly double[] radius;
    private readonly double[] lengthX; // from the centre to the middle of one side
    private readonly double[] lengthY;
    private readonly double[] widthX; // and of the next
    private readonly double[] widthY;
    private readonly double[] standsFrom; // those on a floor are met only by paths that come above it, and those under a ceiling only by paths below
    private readonly double[] standsTo;
    private readonly uint[] shells; // of each group, a bit each

    internal BoxLanes(IReadOnlyList<FixtureBox> boxes)
    {
        double[] Column(Func<FixtureBox, double> number) =>
            [.. boxes.Select(number), .. Enumerable.Repeat(0.0, -boxes.Count & (PlanPanels.Lanes - 1))];

        (centreX, centreY, radius) = (Column(b => b.Centre.X), Column(b => b.Centre.Y), Column(b => b.RadiusMetres + GeometryTolerances.SlackMetres));
        (lengthX, lengthY) = (Column(b => (b.Corners[1].X - b.Corners[0].X) / 2), Column(b => (b.Corners[1].Y - b.Corners[0].Y) / 2));
        (widthX, widthY) = (Column(b => (b.Corners[2].X - b.Corners[1].X) / 2), Column(b => (b.Corners[2].Y - b.Corners[1].Y) / 2));
        standsFrom = Column(b => b.VerticalExtent.OnFloor ? b.VerticalExtent.Low : double.NegativeInfinity);
        standsTo = Column(b => b.VerticalExtent.UnderCeiling ? b.VerticalExtent.High : double.PositiveInfinity);
        shells = new uint[centreX.Length / PlanPanels.Lanes];
        for (int i = 0; i < boxes.Count; i++)
        {
            shells[i / PlanPanels.Lanes] |= boxes[i].IsShell ? 1u << (i % PlanPanels.Lanes) : 0;
        }
    }

    /// <summary>Those of a group that are hollow, a bit each.</summary>
    internal uint Shells(int group) => shells[group];

    /// <summary>Those of a group that a ray's front may meet between some heights, a bit each.</summary>
    /// <param name="group">The group.</param>
    /// <param name="ray">The ray.</param>
    /// <param name="least">Least height of the path, metres.</param>
    /// <param name="greatest">Greatest height.</param>
    internal uint MayMeet(int group, in Ray ray, double least, double greatest)
    {
        Vector512<double> east = Load(centreX, group) - Vector512.Create(ray.From.X), north = Load(centreY, group) - Vector512.Create(ray.From.Y);
        Vector512<double> left = (ray.EastX * north) - (ray.NorthY * east), abreast = (ray.EastX * east) + (ray.NorthY * north);
        Vector512<double> lengthX = Load(this.lengthX, group), lengthY = Load(this.lengthY, group), widthX = Load(this.widthX, group), widthY = Load(this.widthY, group);
        Vector512<double> clear = Vector512.Create(ClearMetres), reach = Vector512.Create(ray.Reach.End);
        Vector512<double> halfAcross = Vector512.Abs((ray.EastX * lengthY) - (ray.NorthY * lengthX)) + Vector512.Abs((ray.EastX * widthY) - (ray.NorthY * widthX)) + clear;
        Vector512<double> halfAlong = Vector512.Abs((ray.EastX * lengthX) + (ray.NorthY * lengthY)) + Vector512.Abs((ray.EastX * widthX) + (ray.NorthY * widthY)) + clear;

        // Farther from the line than the front reaches where that is widest abreast of it, before the ray's start, or after its end.
        Vector512<double> aside = Vector512.Max(Vector512.Abs(left) - halfAcross, Vector512<double>.Zero), plan = Vector512.Create(ray.PlanMetres);
        Vector512<double> widest = Vector512.Min(Vector512.Max(0.5 * plan, abreast - halfAlong), abreast + halfAlong) / plan;
        Vector512<double> t = Vector512.Min(Vector512.Max(widest, Vector512.Create(ray.Least)), Vector512.Create(ray.Greatest));
        Vector512<double> met = Vector512.LessThanOrEqual(aside * aside, reach * reach * (ray.ZoneSquareMetres / 2) * t * (Vector512<double>.One - t));
        met &= Vector512.GreaterThanOrEqual(abreast + halfAlong, Vector512<double>.Zero) & Vector512.LessThanOrEqual(abreast - halfAlong, plan);
        met &= Vector512.GreaterThan(Vector512.Create(greatest), Load(standsFrom, group)) & Vector512.LessThan(Vector512.Create(least), Load(standsTo, group));
        return (uint)met.ExtractMostSignificantBits();
    }

    /// <summary>Those of a group within whose circle on the plan a place lies, a bit each.</summary>
    internal uint Near(int group, Point2 at)
    {
        Vector512<double> east = Load(centreX, group) - Vector512.Create(at.X), north = Load(centreY, group) - Vector512.Create(at.Y), radius = Load(this.radius, group);
        return (uint)Vector512.LessThanOrEqual((east * east) + (north * north), radius * radius).ExtractMostSignificantBits();
    }

    private static Vector512<double> Load(double[] column, int group) => PlanPanels.Group(column, group);
}
