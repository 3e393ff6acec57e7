using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Houses;

/// <summary>What lies between a level and the next one up.</summary>
/// <param name="BuildUp">Its layers.</param>
/// <param name="Joists">How its joists lie; null where the build-up has none.</param>
/// <param name="Voids">Holes: stairwells, galleries.</param>
public sealed record FloorAbove(FloorBuildUp BuildUp, JoistLayout? Joists, IReadOnlyList<Polygon> Voids);
