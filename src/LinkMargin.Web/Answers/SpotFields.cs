using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Web.Answers;

/// <summary>The fields of one spot on all levels: coarse while the user drags, fine after that.</summary>
internal interface ISpotFields
{
    /// <summary>Coarse fields of all levels, as fast as possible.</summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="spot">The spot.</param>
    /// <param name="allowanceDb">What to subtract from a median to estimate the margin to count on, dB; taken from the seats.</param>
    /// <param name="cancellation">Stops the work.</param>
    public IReadOnlyList<(Field Median, Field CountOn)> Coarse(LinkModel model, Spot spot, double allowanceDb, CancellationToken cancellation);

    /// <summary>Fine fields, one level at a time as they become ready.</summary>
    public IEnumerable<(Field Median, Field CountOn)> Fine(LinkModel model, Spot spot, int firstLevel, CancellationToken cancellation);
}

/// <summary>Fields in the two stages of the engine: coarse while dragging, then as exact as a map needs.</summary>
/// <param name="basis">The uncertainty of all inputs.</param>
/// <param name="confidence">Share of cases in which the margin to count on is reached, above 0 and below 1.</param>
internal sealed class StagedSpotFields(UncertaintyBasis basis, double confidence) : ISpotFields
{
    // Coarse: few enough cells for dragging, whatever the size of the house. Fine: enough for smooth lines.
    private const int CoarseCells = 1000;
    private const double LeastCoarseMetres = 0.25;
    private const int FineCells = 8000;
    private const double LeastFineMetres = 0.15;

    /// <inheritdoc/>
    public IReadOnlyList<(Field Median, Field CountOn)> Coarse(LinkModel model, Spot spot, double allowanceDb, CancellationToken cancellation)
    {
        double cell = CellOf(model.House, CoarseCells, LeastCoarseMetres);
        return
        [
            .. Enumerable.Range(0, model.House.Levels.Count).Select(level =>
            {
                Field median = FieldComputation.Compute(model, new FieldRequest(spot, level) { CellMetres = cell, Stage = FieldStage.Coarse }, null, cancellation);
                return (median, median with { MarginDb = [.. median.MarginDb.Select(db => db - allowanceDb)] });
            }),
        ];
    }

    /// <inheritdoc/>
    public IEnumerable<(Field Median, Field CountOn)> Fine(LinkModel model, Spot spot, int firstLevel, CancellationToken cancellation)
    {
        double cell = CellOf(model.House, FineCells, LeastFineMetres);
        foreach (int level in Enumerable.Range(0, model.House.Levels.Count).OrderBy(level => Math.Abs(level - firstLevel)))
        {
            Field median = FieldComputation.Compute(model, new FieldRequest(spot, level) { CellMetres = cell, Stage = FieldStage.Map }, null, cancellation);
            cancellation.ThrowIfCancellationRequested();
            yield return (median, FieldAtConfidence.Of(model, median, basis, confidence));
        }
    }

    private static double CellOf(House house, int cells, double leastMetres)
    {
        double area = house.Levels.Sum(level =>
        {
            Grid whole = LevelGrid.Over(level, 1);
            return (double)whole.Count;
        });
        return Math.Max(leastMetres, Math.Round(Math.Sqrt(area / cells), 2));
    }
}
