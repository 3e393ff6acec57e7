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

        double whole = Math.Sqrt((gx * gx) + (gy * gy) + (gz * gz));
        passage = new BoxPassage { Enter = double.NegativeInfinity, Leave = double.PositiveInfinity };
        if (!Between(x, dx, -halfX, halfX, BoxSides.West, BoxSides.East, whole, ref passage)
            || !Between(y, dy, -halfY, halfY, BoxSides.South, BoxSides.North, whole, ref passage)
            || !Between(from.Z, gz, low, high, BoxSides.Bottom, BoxSides.Top, whole, ref passage)
            || (Math.Min(passage.Leave, 1) - Math.Max(passage.Enter, 0)) * whole <= Touching.SlackMetres)
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

    // Narrows the passage to the part of the line between two parallel sides. A line along them lies between them where
    // its middle does, so that its direction plays no part; in a side it is outside.
    private static bool Between(
        double at,
        double step,
        double least,
        double greatest,
        BoxSides leastSide,
        BoxSides greatestSide,
        double whole,
        ref BoxPassage passage)
    {
        if (Math.Abs(step) <= Touching.ParallelSine * whole)
        {
            double middle = at + (step / 2);
            return middle > least + Touching.SlackMetres && middle < greatest - Touching.SlackMetres;
        }

        double slack = Touching.SlackMetres / whole;

        double toLeast = (least - at) / step, toGreatest = (greatest - at) / step;
        (double enter, double leave, BoxSides enterSide, BoxSides leaveSide) = step > 0
            ? (toLeast, toGreatest, leastSide, greatestSide)
            : (toGreatest, toLeast, greatestSide, leastSide);
        if (enter > passage.Enter - slack)
        {
            passage.EnterSide = enter > passage.Enter + slack ? enterSide : passage.EnterSide | enterSide;
            passage.Enter = Math.Max(enter, passage.Enter);
        }

        if (leave < passage.Leave + slack)
        {
            passage.LeaveSide = leave < passage.Leave - slack ? leaveSide : passage.LeaveSide | leaveSide;
            passage.Leave = Math.Min(leave, passage.Leave);
        }

        return passage.Enter < passage.Leave;
    }
}
