using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// Where a line goes into a box and out again: places along it (below 0 or above 1 where an end lies inside), the sides
/// (several where it goes through their common edge), and the cosine of the angle to the first of those sides' normals.
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
