using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Scenes;

/// <summary>One fixture, ready to be pierced by lines.</summary>
internal sealed class FixtureBox
{
    private readonly Point2 centre;
    private readonly double cos;
    private readonly double sin;
    private readonly double halfX;
    private readonly double halfY;
    private readonly double low;
    private readonly double high;

    internal FixtureBox(Fixture fixture, double floorHeight, int material, int name)
    {
        double turn = double.DegreesToRadians(fixture.TurnDegrees);
        centre = fixture.Centre;
        cos = Math.Cos(turn);
        sin = Math.Sin(turn);
        halfX = fixture.SizeX / 2;
        halfY = fixture.SizeY / 2;
        low = floorHeight + fixture.FromMetres;
        high = floorHeight + fixture.ToMetres;
        Level = fixture.LevelIndex;
        Material = material;
        Name = name;
        IsShell = fixture.IsShell;
        OpenSides = fixture.OpenSides;
        BulkThickness = fixture.Material.Form == LossForm.Bulk ? fixture.Material.ThicknessMetres : null;
        double reachX = (Math.Abs(cos) * halfX) + (Math.Abs(sin) * halfY);
        double reachY = (Math.Abs(sin) * halfX) + (Math.Abs(cos) * halfY);
        Bounds = new PlanBox(centre.X - reachX, centre.Y - reachY, centre.X + reachX, centre.Y + reachY);
    }

    internal int Level { get; }

    internal int Material { get; }

    internal int Name { get; }

    internal bool IsShell { get; }

    internal BoxSides OpenSides { get; }

    /// <summary>Thickness the loss belongs to, where loss grows with the length inside; null elsewhere.</summary>
    internal double? BulkThickness { get; }

    internal PlanBox Bounds { get; }

    /// <summary>Whether any part of the line lies inside, and where.</summary>
    internal bool Pierce(Point3 from, Point3 to, out BoxPassage passage)
    {
        // Into the box's own axes.
        double fx = from.X - centre.X, fy = from.Y - centre.Y;
        double gx = to.X - from.X, gy = to.Y - from.Y, gz = to.Z - from.Z;
        double x = (cos * fx) + (sin * fy), y = (cos * fy) - (sin * fx);
        double dx = (cos * gx) + (sin * gy), dy = (cos * gy) - (sin * gx);

        passage = new BoxPassage { Enter = double.NegativeInfinity, Leave = double.PositiveInfinity };
        if (!Between(x, dx, -halfX, halfX, BoxSides.West, BoxSides.East, ref passage)
            || !Between(y, dy, -halfY, halfY, BoxSides.South, BoxSides.North, ref passage)
            || !Between(from.Z, gz, low, high, BoxSides.Bottom, BoxSides.Top, ref passage)
            || passage.Leave <= 0
            || passage.Enter >= 1)
        {
            return false;
        }

        double whole = Math.Sqrt((gx * gx) + (gy * gy) + (gz * gz));
        passage.EnterCos = CosineAt(passage.EnterSide);
        passage.LeaveCos = CosineAt(passage.LeaveSide);
        return true;

        double CosineAt(BoxSides side) => Math.Abs(side switch
        {
            BoxSides.West or BoxSides.East => dx,
            BoxSides.South or BoxSides.North => dy,
            _ => gz,
        }) / whole;
    }

    // Narrows the passage to the part of the line between two parallel sides.
    private static bool Between(
        double at, double step, double least, double greatest, BoxSides leastSide, BoxSides greatestSide, ref BoxPassage passage)
    {
        if (step == 0)
        {
            return at > least && at < greatest;
        }

        double toLeast = (least - at) / step, toGreatest = (greatest - at) / step;
        (double enter, double leave, BoxSides enterSide, BoxSides leaveSide) = step > 0
            ? (toLeast, toGreatest, leastSide, greatestSide)
            : (toGreatest, toLeast, greatestSide, leastSide);
        if (enter > passage.Enter)
        {
            passage.Enter = enter;
            passage.EnterSide = enterSide;
        }

        if (leave < passage.Leave)
        {
            passage.Leave = leave;
            passage.LeaveSide = leaveSide;
        }

        return passage.Enter < passage.Leave;
    }
}
