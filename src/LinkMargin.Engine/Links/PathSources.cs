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
    /// <param name="house">The house.</param>
    /// <param name="akin">The sources of a house of which this one is a variant; empty for none.</param>
    internal static IPathSource[] In(TracedHouse house, IEnumerable<IPathSource> akin)
    {
        // What the rooms reflect and where edges lead do not depend on each other, and each takes as long as the other.
        DiffuseRooms? rooms = null;
        ReflectedPaths? reflected = null;
        EdgeGraph? edges = null;
        Parallel.Invoke(
            () => rooms = new DiffuseRooms(house, akin.OfType<DiffuseRooms>().FirstOrDefault()),
            () =>
            {
                var walls = new ClosingWalls(house);
                reflected = new ReflectedPaths(house, walls);
                edges = new EdgeGraph(house, walls);
            });
        return [new DirectPaths(house), rooms!, reflected!, edges!];
    }
}
