using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Fitting;

/// <summary>
/// The mean of repeated measurements of one link: a mean of powers, not of decibels. The model gives the local mean of power.
/// With fading the mean of decibels is lower: by nothing in the open, by 2.5 dB (10γ/ln 10, γ Euler's constant) where many paths
/// of similar strength meet (Rayleigh fading). It would make far rooms, and so the fitted losses, look lossier than they are. The
/// mean of powers is right for any fading; for n samples of Rayleigh fading it is also the most likely level, and scatters by
/// 4.3/√n dB against 5.6/√n. Its disadvantage, the large weight of a high outlier, is covered by the fit's bad measurements.
/// </summary>
public static class PowerMean
{
    /// <summary>
    /// From this many equal rows on they count as one sample: the display was frozen or rows were copied, since fading changes
    /// a level by more than the 1 dB steps that devices show.
    /// </summary>
    public const int MostEqual = 5;

    /// <summary>The mean of one link's levels.</summary>
    /// <param name="heardDbm">Levels that were heard, dBm.</param>
    /// <param name="boundsDbm">For each time nothing was heard, the level below which nothing can be heard, dBm.</param>
    /// <returns>
    /// The level, whether it was heard or is only a bound, and how many samples it stands for. Where most samples were heard, the
    /// others enter with their bounds, which is at most slightly too high. Where most were not, all that is known is that the
    /// level lies below the highest bound.
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
