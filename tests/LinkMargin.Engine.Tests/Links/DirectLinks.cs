using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>Links by the straight line alone.</summary>
internal static class DirectLinks
{
    /// <summary>The budgets of every seat with every spot: one row for each seat.</summary>
    internal static LinkBudget[][] Budgets(Scene scene)
    {
        var model = new LinkModel(scene, ModelDepth.Direct);
        return [.. scene.House.Seats.Select(seat => scene.House.Spots.Select(spot => LinkEvaluation.Budget(model, spot, seat)).ToArray())];
    }

    /// <summary>The straight line between two places, with what it crosses layer by layer.</summary>
    internal static TracedPath Path(Scene scene, Point3 from, Point3 to) => new(
        PathKind.Direct,
        [from, to],
        from.DistanceTo(to),
        Itemisation.Crossings(scene, from, to, new TraceBuffer(), wholeFloors: false));
}
