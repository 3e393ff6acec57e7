namespace LinkMargin.Engine.Fitting;

/// <summary>Two unknowns that the measurements do not tell apart: what one takes the other gives.</summary>
/// <param name="First">A material or a pair of devices.</param>
/// <param name="Second">Another.</param>
/// <param name="Correlation">Of what is still out about them, −1 to 1: near −1 their sum is known and not how it is parted.</param>
public sealed record IndistinctPair(string First, string Second, double Correlation)
{
    /// <summary>From here on, either way, half and more of what is out about one is out about the other.</summary>
    public const double LeastCorrelation = 0.7;

    /// <summary>All pairs of a fit, worst first.</summary>
    public static IReadOnlyList<IndistinctPair> Of(LossFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        int count = fit.Materials.Count + fit.Devices.Count;
        double[] variances = [.. Enumerable.Range(0, count).Select(i => fit.CovarianceDb2(i, i))];
        List<IndistinctPair> pairs = [];
        for (int i = 0; i < count; i++)
        {
            for (int j = i + 1; j < count; j++)
            {
                // Thousands of devices make millions of pairs, so the two variances are not computed again for each.
                double both = Math.Sqrt(variances[i] * variances[j]);
                double correlation = both > 0 ? Math.Clamp(fit.CovarianceDb2(i, j) / both, -1, 1) : 0;
                if (Math.Abs(correlation) >= LeastCorrelation)
                {
                    pairs.Add(new IndistinctPair(fit.Problem.NameOf(i), fit.Problem.NameOf(j), correlation));
                }
            }
        }

        return [.. pairs.OrderByDescending(pair => Math.Abs(pair.Correlation))];
    }
}
