using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Fields;

/// <summary>What field is wanted.</summary>
/// <param name="Spot">Where the console stands.</param>
/// <param name="LevelIndex">The level the hands are on; 0 is the lowest.</param>
public sealed record FieldRequest(Spot Spot, int LevelIndex)
{
    /// <summary>Hands of somebody on a sofa, metres above the floor: common practice.</summary>
    public const double SofaHandsMetres = 0.7;

    /// <summary>Side of a cell by default, metres: finer than a wavelength, so nothing a map could show is lost.</summary>
    public const double DefaultCellMetres = 0.1;

    /// <summary>Side of a cell, metres, above 0.</summary>
    public double CellMetres { get; init; } = DefaultCellMetres;

    /// <summary>Height of the hands above the level's floor, metres.</summary>
    public double HandsMetres { get; init; } = SofaHandsMetres;

    /// <summary>How many threads may work at once; every number gives the same bits. Null: as many as there are processors.</summary>
    public int? Threads { get; init; }
}
