using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Web.Answers;

/// <summary>The fields of one spot on all levels: a coarse one while somebody drags, a fine one once they let go.</summary>
internal interface ISpotFields
{
    /// <summary>Coarse fields, all levels, as fast as can be.</summary>
    /// <param name="model">The house, ready.</param>
    /// <param name="spot">The spot.</param>
    /// <param name="allowanceDb">What to take off a median to get about the margin to count on, dB: that of the seats.</param>
    /// <param name="cancellation">Stops the work.</param>
    public IReadOnlyList<(Field Median, Field CountOn)> Coarse(LinkModel model, Spot spot, double allowanceDb, CancellationToken cancellation);

    /// <summary>Fine fields, level by level as they are ready.</summary>
    public IEnumerable<(Field Median, Field CountOn)> Fine(LinkModel model, Spot spot, int firstLevel, CancellationToken cancellation);
}

/// <summary>Fields in the stages of the engine: coarse for a hand that moves, then as close to exact as a map needs.</summary>
/// <param name="basis">How uncertain the figures are.</param>
/// <param name="confidence">How often a margin that is counted on is exceeded, above 0 and below 1.</param>
internal sealed class StagedSpotFields(UncertaintyBasis basis, double confidence) : ISpotFields
{
    // Few enough cells for a map while somebody drags, whatever the size of the house; fine enough, afterwards, for lines that read well.
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
