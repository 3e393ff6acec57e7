using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>A place where a path may be diffracted: beside an upright edge, or at the rim of a hole in a floor.</summary>
/// <param name="Plan">Where on the plan: a few centimetres clear of the edge.</param>
/// <param name="Low">The least height at which a path passes it, above the lowest floor, metres.</param>
/// <param name="High">The greatest.</param>
/// <param name="LowLevel">The lowest level it is open to.</param>
/// <param name="HighLevel">The highest.</param>
/// <param name="Group">Edges of one doorway or hole share a number: their paths carry the same energy.</param>
/// <param name="Kind">What kind of thing it goes round or through.</param>
/// <param name="Name">Which one.</param>
internal sealed record DiffractionEdge(
    Point2 Plan, double Low, double High, int LowLevel, int HighLevel, int Group, TurnKind Kind, string Name)
{
    /// <summary>The two jambs of a doorway, the near one first; null where nothing stands opposite.</summary>
    internal (Point2 Near, Point2 Far)? Jambs { get; init; }

    /// <summary>Whether it is open to a level.</summary>
    internal bool IsOpenTo(int level) => level >= LowLevel && level <= HighLevel;

    /// <summary>Where a path that would pass at a height is diffracted.</summary>
    internal Point3 At(double height) => Plan.At(Math.Clamp(height, Low, High));

    /// <summary>The turn of a path here, at a distance from the console along the path.</summary>
    internal PathTurn TurnAt(double distanceMetres) => new(Kind, Name, LowLevel, distanceMetres);
}
