using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Fields;

/// <summary>Computes fields in one go.</summary>
public static class FieldComputation
{
    /// <summary>The margin at the centre of every cell of a level that lies in a room.</summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="request">What is wanted.</param>
    /// <param name="rowDone">Called from any thread as the work goes on, once for each row; null for none.</param>
    /// <param name="cancellation">Stops the work between two cells.</param>
    public static Field Compute(
        LinkModel model, FieldRequest request, Action? rowDone = null, CancellationToken cancellation = default) =>
        Completed(model, request, rowDone, cancellation).Current();

    /// <summary>The same, to go on with.</summary>
    internal static ProgressiveField Completed(LinkModel model, FieldRequest request, Action? rowDone, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(request);
        var field = new ProgressiveField(model, request);
        if (!field.Advance(request.Stage, rowDone, cancellation))
        {
            cancellation.ThrowIfCancellationRequested();
        }

        return field;
    }
}

/// <summary>The margin over one level for one spot.</summary>
/// <param name="Spot">Where the console stands.</param>
/// <param name="LevelIndex">The level the hands are on; 0 is the lowest.</param>
/// <param name="HandsMetres">Height of the hands above that level's floor, metres.</param>
/// <param name="Grid">The cells.</param>
/// <param name="MarginDb">Margin at each cell's centre, dB, in the grid's order; NaN = not computed (outside every room).</param>
public sealed record Field(Spot Spot, int LevelIndex, double HandsMetres, Grid Grid, IReadOnlyList<double> MarginDb)
{
    /// <summary>How close to the exact figures its cells are.</summary>
    public FieldStage Stage { get; init; } = FieldStage.Exact;
}

/// <summary>What field is wanted.</summary>
/// <param name="Spot">Where the console stands.</param>
/// <param name="LevelIndex">The level the hands are on; 0 is the lowest.</param>
public sealed record FieldRequest(Spot Spot, int LevelIndex)
{
    /// <summary>Hands of somebody on a sofa, metres above the floor: common practice.</summary>
    public const double SofaHandsMetres = 0.7;

    /// <summary>Default side of a cell, metres: finer than a wavelength, so nothing a map could show is lost.</summary>
    public const double DefaultCellMetres = 0.1;

    /// <summary>Side of a cell, metres, above 0.</summary>
    public double CellMetres { get; init; } = DefaultCellMetres;

    /// <summary>Height of the hands above the level's floor, metres.</summary>
    public double HandsMetres { get; init; } = SofaHandsMetres;

    /// <summary>How close to the exact figures its cells must be.</summary>
    public FieldStage Stage { get; init; } = FieldStage.Exact;

    /// <summary>How many threads may work at once; every number gives the same bits. Null: as many as there are processors.</summary>
    public int? Threads { get; init; }
}
