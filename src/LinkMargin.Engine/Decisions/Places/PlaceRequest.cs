namespace LinkMargin.Engine.Decisions.Places;

/// <summary>Where to look for a place for a console.</summary>
public sealed record PlaceRequest
{
    /// <summary>Between places in a zone by default, metres: about a wavelength.</summary>
    public const double ZoneCellMetres = 0.1;

    /// <summary>Between places on the floor by default, metres: about the width of a console.</summary>
    public const double FloorCellMetres = 0.25;

    /// <summary>Heights over the floor by default where no zone says any, metres: a low and a high board of a shelf.</summary>
    public static IReadOnlyList<double> FloorHeightsMetres { get; } = [0.5, 1.5];

    /// <summary>Whether to look over all free floor though the house has zones.</summary>
    public bool Everywhere { get; init; }

    /// <summary>Between places, metres, above 0; null for <see cref="ZoneCellMetres"/> or <see cref="FloorCellMetres"/>.</summary>
    public double? CellMetres { get; init; }

    /// <summary>Heights over the floor where no zone says any, metres.</summary>
    public IReadOnlyList<double> HeightsMetres { get; init; } = FloorHeightsMetres;

    /// <summary>The one level to look on; null for all.</summary>
    public int? LevelIndex { get; init; }

    /// <summary>How many places are wanted at most.</summary>
    public int Most { get; init; } = 5;

    /// <summary>How far apart two places are at least to be told as two, metres.</summary>
    public double ApartMetres { get; init; } = 1;

    /// <summary>How many threads may work at once; every number gives the same answer. Null: as many as there are processors.</summary>
    public int? Threads { get; init; }
}
