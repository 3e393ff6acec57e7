using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>A house as the compiler makes it: obstacles and mirrors in numbers, with materials and names by their index in a list.</summary>
internal sealed record CompiledHouse
{
    /// <summary>The house it was made from.</summary>
    internal required House House { get; init; }

    /// <summary>The channels losses are averaged over.</summary>
    internal required Band Band { get; init; }

    /// <summary>The walls of each level.</summary>
    internal required Storey[] Storeys { get; init; }

    /// <summary>The floors between levels.</summary>
    internal required FloorSheets[] Floors { get; init; }

    /// <summary>The fixtures.</summary>
    internal required FixtureBoxes Fixtures { get; init; }

    /// <summary>The materials that hits refer to by number.</summary>
    internal required IReadOnlyList<Material> Materials { get; init; }

    /// <summary>The names that hits refer to by number.</summary>
    internal required IReadOnlyList<string> Names { get; init; }

    /// <summary>Upright surfaces that reflect: walls that share a plane, and the sides of large fixtures.</summary>
    internal required UprightMirror[] Uprights { get; init; }

    /// <summary>Level surfaces that reflect: floors and ceilings.</summary>
    internal required IReadOnlyList<LevelMirror> Plates { get; init; }

    /// <summary>The layers of each whole floor, by number.</summary>
    internal required IReadOnlyDictionary<int, int[]> FloorLayers { get; init; }
}
