using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Paths.Diffracted;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Paths.Direct;
using LinkMargin.Engine.Paths.Reflected;

namespace LinkMargin.Engine.Links;

/// <summary>The kinds of path of the full model: a new kind is registered here.</summary>
internal static class PathSources
{
    /// <summary>
    /// Every kind, in the order in which their powers are added up. Those that always count come first: the others count only if
    /// they add a certain share of that power.
    /// </summary>
    internal static IPathSource[] In(TracedHouse house)
    {
        var walls = new ClosingWalls(house);
        return
        [
            new DirectPaths(house),
            new DiffuseRooms(house),
            new ReflectedPaths(house, walls),
            new EdgeGraph(house, walls),
        ];
    }
}
