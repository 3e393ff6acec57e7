using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// Where a line enters and leaves a box: places along it (below 0 or above 1 where an end lies inside), the sides (several
/// where it goes through their common edge), and the cosine of the angle to the first of those sides' normals.
/// </summary>
internal struct BoxPassage
{
    public double Enter;
    public double Leave;
    public BoxSides EnterSide;
    public BoxSides LeaveSide;
    public double EnterCos;
    public double LeaveCos;
}

/// <summary>The space between two parallel sides of a box.</summary>
internal readonly record struct BoxSlab(double Least, double Greatest, BoxSides LeastSide, BoxSides GreatestSide)
{
    /// <summary>
    /// Narrows a passage to the part of the line that lies in it; false if nothing is left. A line parallel to the sides lies between
    /// them if its middle does, so that its direction does not matter; in a side it is outside.
    /// </summary>
    internal bool Narrow(ref BoxPassage passage, double at, double step, double whole)
    {
        if (Math.Abs(step) <= GeometryTolerances.ParallelSine * whole)
        {
            double middle = at + (step / 2);
            return middle > Least + GeometryTolerances.SlackMetres && middle < Greatest - GeometryTolerances.SlackMetres;
        }

        double slack = GeometryTolerances.SlackMetres / whole;

        double toLeast = (Least - at) / step, toGreatest = (Greatest - at) / step;
        (double enter, double leave, BoxSides enterSide, BoxSides leaveSide) = step > 0
            ? (toLeast, toGreatest, LeastSide, GreatestSide)
            : (toGreatest, toLeast, GreatestSide, LeastSide);
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
