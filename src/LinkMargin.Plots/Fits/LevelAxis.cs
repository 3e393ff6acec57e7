using LinkMargin.Plots.Drawing;

namespace LinkMargin.Plots.Fits;

/// <summary>The levels that both axes of a fit run over.</summary>
internal static class LevelAxis
{
    private const double LeastSpanDb = 30;
    private const double EdgeDb = 2.5;
    private const int MostSteps = 8;

    /// <summary>The axis that holds all points, dBm.</summary>
    public static DecibelAxis Of(IEnumerable<FitPoint> points)
    {
        double[] all = [.. points.SelectMany(point => new[] { point.ReadDbm, point.PredictedDbm }).Where(double.IsFinite)];
        var axis = DecibelAxis.Over(all.Length == 0 ? -90 : all.Min(), all.Length == 0 ? -40 : all.Max(), EdgeDb, MostSteps);
        return axis with { Least = Math.Min(axis.Least, axis.Greatest - LeastSpanDb) };
    }
}
