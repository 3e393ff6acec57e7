using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Fitting;

/// <summary>
/// The mean of repeated measurements of one link: a mean of powers, not of decibels. The model gives the local mean of power,
/// and fading parts the two: the mean of decibels lies below it by nothing in the open and by 2.5 dB (10γ/ln 10, γ Euler's
/// constant) where many paths of like strength meet (Rayleigh fading), so that it would make far rooms look lossier than they
/// are, and the losses with them. The mean of powers is right for any fading; of n samples of Rayleigh fading it is also the
/// most likely level, and scatters by 4.3/√n dB against 5.6/√n. What it costs, a high outlier weighing much, is what the fit's
/// bad measurements are for.
/// </summary>
public static class PowerMean
{
    /// <summary>
    /// Copies of one number are one sample: from so many equal rows on, a display stood still or rows were copied, since
    /// fading moves a level by more than the decibel that devices show.
    /// </summary>
    public const int MostEqual = 5;

    /// <summary>The mean of one link's levels.</summary>
    /// <param name="heardDbm">Levels that were heard, dBm.</param>
    /// <param name="boundsDbm">For each time nothing was heard, the level below which nothing is, dBm.</param>
    /// <returns>
    /// The level, whether it is one or only a bound, and how many samples it stands for. Where most samples were heard, those
    /// that were not enter with their bounds, which is at most a little too much. Where most were not, all that is known is
    /// that the level lies below the highest bound.
    /// </returns>
    public static (double LevelDbm, bool IsHeard, int SampleCount) Of(IReadOnlyList<double> heardDbm, IReadOnlyList<double> boundsDbm)
    {
        ArgumentNullException.ThrowIfNull(heardDbm);
        ArgumentNullException.ThrowIfNull(boundsDbm);
        if (heardDbm.Count + boundsDbm.Count == 0)
        {
            throw new ArgumentException("A mean is over at least one level.", nameof(heardDbm));
        }

        if (boundsDbm.Count >= heardDbm.Count)
        {
            return (boundsDbm.Max(), false, 1);
        }

        double[] all = [.. heardDbm, .. boundsDbm];
        double mean = Decibels.FromPowerRatio(all.Average(Decibels.ToPowerRatio));
        return (mean, true, all.Length >= MostEqual && all.Distinct().Count() == 1 ? 1 : all.Length);
    }
}
