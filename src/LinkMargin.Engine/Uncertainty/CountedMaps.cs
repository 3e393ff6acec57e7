using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// Maps of the margin to count on and of the median, with exact figures: cells so close to the required margin, or to the lowest or highest
/// cell, that interpolation could decide the share of the floor that passes, the minimum or the maximum are traced.
/// </summary>
/// <param name="Model">The model of the house.</param>
/// <param name="Basis">How uncertain the figures are.</param>
/// <param name="Confidence">How often the margin to count on is exceeded, above 0 and below 1.</param>
/// <param name="RequiredDb">The required margin, dB.</param>
public sealed record CountedMaps(LinkModel Model, UncertaintyBasis Basis, double Confidence, double RequiredDb)
{
    // 95 of 100 cells of a map are closer to the exact figure. Those of the others that are on the wrong side of the required margin are less
    // than 0.02 % of the demo house's cells.
    private const double NearDb = 0.1;

    /// <summary>Computes both fields of one spot and level.</summary>
    /// <param name="request">What is wanted.</param>
    /// <param name="rowDone">Called from any thread as the work goes on, once for each row; null for none.</param>
    /// <param name="cancellation">Stops the work between two cells.</param>
    public (Field Median, Field AtConfidence) Compute(FieldRequest request, Action? rowDone = null, CancellationToken cancellation = default)
    {
        ProgressiveField field = FieldComputation.Completed(Model, request, rowDone, cancellation);
        Field median = field.Current();
        var allowance = FieldAllowance.Of(Model, median, Basis, Confidence);
        Field counted = allowance.AddTo(median);
        if (median.Stage == FieldStage.Exact)
        {
            return (median, counted);
        }

        // First the lowest and the highest by the map; then all that could be lower, or higher, than those exactly are.
        field.Trace(Ends(median).Union(Ends(counted)), cancellation);
        median = field.Current();
        counted = allowance.AddTo(median);
        field.Trace(CellsThatDecide(median).Union(CellsThatDecide(counted)), cancellation);
        median = field.Current();
        return (median, allowance.AddTo(median));
    }

    private static IEnumerable<int> Ends(Field field)
    {
        int[] cells = [.. Enumerable.Range(0, field.MarginDb.Count).Where(cell => !double.IsNaN(field.MarginDb[cell]))];
        return cells.Length == 0 ? [] : [cells.MinBy(cell => field.MarginDb[cell]), cells.MaxBy(cell => field.MarginDb[cell])];
    }

    private IEnumerable<int> CellsThatDecide(Field field) => FieldSummary.Of(field, RequiredDb) is not { } all ? [] : Enumerable.Range(0, field.MarginDb.Count)
        .Where(cell => Math.Abs(field.MarginDb[cell] - RequiredDb) <= NearDb
            || field.MarginDb[cell] <= all.LeastDb + ProgressiveField.MapAccuracyDb
            || field.MarginDb[cell] >= all.GreatestDb - ProgressiveField.MapAccuracyDb);
}
