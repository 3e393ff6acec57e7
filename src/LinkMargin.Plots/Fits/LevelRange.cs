namespace LinkMargin.Plots.Fits;

/// <summary>The levels that both axes run over, in whole tens.</summary>
/// <param name="Least">The least, dBm.</param>
/// <param name="Greatest">The greatest, dBm.</param>
internal readonly record struct LevelRange(double Least, double Greatest)
{
    private const double StepDb = 10;
    private const double LeastDb = 30;
    private const double EdgeDb = 2.5;

    /// <summary>Where figures stand.</summary>
    public IEnumerable<double> Ticks
    {
        get
        {
            double step = StepDb * Math.Ceiling((Greatest - Least) / 80);
            for (double tick = Math.Ceiling(Least / step) * step; tick <= Greatest; tick += step)
            {
                yield return tick;
            }
        }
    }

    /// <summary>The range that holds all points.</summary>
    public static LevelRange Of(IEnumerable<FitPoint> points)
    {
        double[] all = [.. points.SelectMany(point => new[] { point.ReadDbm, point.PredictedDbm }).Where(double.IsFinite)];
        double least = all.Length == 0 ? -90 : all.Min(), greatest = all.Length == 0 ? -40 : all.Max();
        least = Math.Floor((least - EdgeDb) / StepDb) * StepDb;
        greatest = Math.Ceiling((greatest + EdgeDb) / StepDb) * StepDb;
        return new(Math.Min(least, greatest - LeastDb), greatest);
    }

    /// <summary>Place of a level along an axis, 0 to 1.</summary>
    public double Share(double levelDbm) => (levelDbm - Least) / (Greatest - Least);
}
