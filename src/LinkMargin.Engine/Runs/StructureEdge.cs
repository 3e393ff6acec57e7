using QuikGraph;

namespace LinkMargin.Engine.Runs;

/// <summary>An edge from one node of the structure to another, and back.</summary>
/// <param name="Source">The node it begins at.</param>
/// <param name="Target">The node it ends at.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Where">The room, wall, passage or level it belongs to; for a floor, the level below it.</param>
/// <param name="LengthMetres">Its length, metres.</param>
/// <param name="Holes">Holes to be bored for it.</param>
internal readonly record struct StructureEdge(int Source, int Target, LegKind Kind, string Where, double LengthMetres, int Holes) : IEdge<int>
{
    // One hole counts as more than any house is long, metres.
    private const double HoleMetres = 1e5;

    // Of equally long routes, prefer the one with fewer climbs, metres: far below any length that is shown.
    private const double ClimbMetres = 1e-8;

    /// <summary>What decides between routes: holes first, then metres, then climbs.</summary>
    internal double Cost => (Holes * HoleMetres) + LengthMetres + (Kind == LegKind.Riser ? ClimbMetres : 0);

    /// <summary>The same from its other end.</summary>
    internal StructureEdge Turned => this with { Source = Target, Target = Source };
}
