namespace LinkMargin.Plots.Spots;

/// <summary>The margins an axis runs over, in whole tens.</summary>
/// <param name="Least">The least, dB.</param>
/// <param name="Greatest">The greatest, dB.</param>
internal readonly record struct MarginAxis(double Least, double Greatest)
{
    private const double StepDb = 10;
    private const double FewestSteps = 3;
    private const double MostSteps = 12;

    /// <summary>Where figures stand.</summary>
    internal IEnumerable<double> Ticks
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

    /// <summary>The axis that holds every bar and every required margin.</summary>
    internal static MarginAxis Of(IReadOnlyList<SpotsSeat> seats)
    {
        double[] all = [0, .. seats.SelectMany(seat => seat.Bars.SelectMany(bar => new[] { bar.CountedDb, bar.HighDb }).Append(seat.RequiredDb))];
        double least = Math.Floor((all.Min() - 1) / StepDb) * StepDb;
        return new(least, Math.Max(Math.Ceiling((all.Max() + 1) / StepDb) * StepDb, least + (FewestSteps * StepDb)));
    }

    /// <summary>Place of a margin along the axis, 0 to 1.</summary>
    internal double Share(double marginDb) => (marginDb - Least) / (Greatest - Least);
}
