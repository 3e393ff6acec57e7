using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Houses;

/// <summary>What lies between a level and the next one up.</summary>
/// <param name="BuildUp">Its layers.</param>
/// <param name="Joists">How its joists lie; null where the build-up has none.</param>
/// <param name="Voids">Holes: stairwells, galleries.</param>
public sealed record FloorAbove(FloorBuildUp BuildUp, JoistLayout? Joists, IReadOnlyList<Polygon> Voids);

/// <summary>What lies between two levels, from the walking surface down to the ceiling below.</summary>
/// <param name="Name">The word used in house files, such as <c>timber-joist-225</c>.</param>
/// <param name="Layers">Layers, top first, at least one.</param>
/// <param name="Source">Where the construction and its figures are from.</param>
public sealed record FloorBuildUp(string Name, IReadOnlyList<FloorLayer> Layers, string Source)
{
    /// <summary>What it is, in words a builder would use.</summary>
    public string Description { get; init; } = "";

    /// <summary>All layers together, metres.</summary>
    public double ThicknessMetres => Layers.Sum(layer => layer.ThicknessMetres);
}

/// <summary>One layer of a floor build-up.</summary>
/// <param name="Material">What it is, or what fills the bay between joists; null for air.</param>
/// <param name="ThicknessMetres">Thickness, metres, above 0.</param>
/// <param name="Joists">The members in a joist bay; null elsewhere.</param>
public sealed record FloorLayer(Material? Material, double ThicknessMetres, Ribs? Joists)
{
    /// <summary>Half-range of the thickness between examples, metres.</summary>
    public double ToleranceMetres { get; init; }
}

/// <summary>How the joists of one floor lie.</summary>
/// <param name="RunDegrees">Direction along a joist, degrees anticlockwise from the x axis.</param>
/// <param name="SpacingMetres">Distance between centres, metres.</param>
/// <param name="FirstOffsetMetres">
/// Distance of one joist's centre line from the plan's origin, metres, measured to the left of the run direction; null
/// where unknown, and then every position is equally likely.
/// </param>
public sealed record JoistLayout(double RunDegrees, double SpacingMetres, double? FirstOffsetMetres);

/// <summary>Parallel members inside a cavity: studs in a wall, joists in a floor.</summary>
/// <param name="Material">What a member is made of; its table loss is that of a member's whole depth.</param>
/// <param name="WidthMetres">Width of a member across its run, metres.</param>
/// <param name="DepthMetres">Depth of a member through the wall or floor, metres.</param>
/// <param name="SpacingMetres">Distance between centres, metres, more than the width.</param>
public sealed record Ribs(Material Material, double WidthMetres, double DepthMetres, double SpacingMetres);
