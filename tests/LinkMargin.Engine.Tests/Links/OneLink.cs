using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>One link of the full model, looked at path by path.</summary>
internal static class OneLink
{
    /// <summary>The wavelength that stands for the band.</summary>
    internal static readonly double WavelengthMetres = Band.Bluetooth.Equivalent.WavelengthMetres;

    /// <summary>A wall that nothing to speak of passes.</summary>
    internal static readonly Material Opaque = SimpleHouse.Material("opaque", 120);

    internal static LinkBudget Of(House house, Point3 console, Point3 hands, double? facingDegrees = null) =>
        Of(new LinkModel(house), console, hands, facingDegrees);

    internal static LinkBudget Of(LinkModel model, Point3 console, Point3 hands, double? facingDegrees = null)
    {
        int LevelAt(double z) => Math.Max(0, model.House.Levels.Count(level => level.ElevationMetres <= z) - 1);
        int from = LevelAt(console.Z), to = LevelAt(hands.Z);
        return LinkEvaluation.Budget(
            model,
            new Spot("spot", from, console.Plan, console.Z - model.House.Levels[from].ElevationMetres),
            new Seat("seat", to, hands.Plan, hands.Z - model.House.Levels[to].ElevationMetres, facingDegrees, 15));
    }

    /// <summary>What a path loses over free space along it, dB, the player's own body left out.</summary>
    internal static double ExcessDb(PathBudget path) => path.LossDb - path.FreeSpaceDb - path.BodyDb;

    /// <summary>What the straight line loses over free space, dB.</summary>
    internal static double DirectDb(House house, Point3 console, Point3 hands) => ExcessDb(Direct(Of(house, console, hands)));

    /// <summary>The same without what surfaces along the line do in step with it; that is for TwoRayTests.</summary>
    internal static double LineDb(House house, Point3 console, Point3 hands)
    {
        PathBudget path = Direct(Of(house, console, hands));
        return ExcessDb(path) - path.SurfacesDb;
    }

    internal static PathBudget Direct(LinkBudget budget) =>
        Assert.Single(budget.Paths, path => path.Path.Kind == PathKind.Direct);
}
