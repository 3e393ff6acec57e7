using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Plots.Plans;

/// <summary>Holes in a level's own floor: those that the level below says lie above it.</summary>
internal static class FloorVoids
{
    public static IReadOnlyList<Polygon> Of(House house, int levelIndex) =>
        levelIndex > 0 ? house.Levels[levelIndex - 1].Above?.Voids ?? [] : [];
}
