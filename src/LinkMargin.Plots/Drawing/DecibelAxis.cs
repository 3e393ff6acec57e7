namespace LinkMargin.Plots.Drawing;

/// <summary>The decibels an axis runs over, in whole tens.</summary>
/// <param name="Least">The least.</param>
/// <param name="Greatest">The greatest.</param>
/// <param name="MostSteps">Between so many figures at most there are ten decibels; beyond, twenty and more.</param>
internal readonly record struct DecibelAxis(double Least, double Greatest, int MostSteps)
{
    private const double StepDb = 10;

    /// <summary>Where figures stand.</summary>
    public IEnumerable<double> Ticks
    {
        get
        {
            double step = StepDb * Math.Ceiling((Greatest - Least) / (MostSteps * StepDb));
            for (double tick = Math.Ceiling(Least / step) * step; tick <= Greatest; tick += step)
            {
                yield return tick;
            }
        }
    }

    /// <summary>The whole tens about some values, with a little room beyond the least and the greatest.</summary>
    public static DecibelAxis Over(double least, double greatest, double roomDb, int mostSteps) =>
        new(Math.Floor((least - roomDb) / StepDb) * StepDb, Math.Ceiling((greatest + roomDb) / StepDb) * StepDb, mostSteps);

    /// <summary>Place of a value along the axis, 0 to 1.</summary>
    public double Share(double db) => (db - Least) / (Greatest - Least);
}
