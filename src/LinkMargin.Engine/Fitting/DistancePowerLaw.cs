namespace LinkMargin.Engine.Fitting;

/// <summary>
/// Path loss by distance alone, which is what a model of the house has to beat: free space, or free space up to one metre
/// and from there so many decibels a decade, to be found.
/// </summary>
public sealed class DistancePowerLaw : IPathLossModel
{
    private const double FreeSpaceExponent = 2;

    /// <summary>
    /// Houses come out anywhere between 1.8 and 3.6 (Rahman, Abbas and Ismail, several multi-floor buildings at 2.4 GHz,
    /// abstract), which this hardly pulls at.
    /// </summary>
    private const double ExponentSpread = 3;

    private readonly IReadOnlyList<double> distancesMetres;
    private readonly IReadOnlyList<double> freeSpaceDb;
    private readonly bool isExponentFree;

    private DistancePowerLaw(IReadOnlyList<double> distancesMetres, IReadOnlyList<double> freeSpaceDb, bool isExponentFree)
    {
        ArgumentNullException.ThrowIfNull(distancesMetres);
        ArgumentNullException.ThrowIfNull(freeSpaceDb);
        (this.distancesMetres, this.freeSpaceDb, this.isExponentFree) = (distancesMetres, freeSpaceDb, isExponentFree);
    }

    /// <inheritdoc/>
    public int ParameterCount => isExponentFree ? 1 : 0;

    /// <summary>What the parameters are: none, or an exponent that is never below 0.</summary>
    public IReadOnlyList<MaterialPrior> Priors =>
        isExponentFree ? [new MaterialPrior("exponent", FreeSpaceExponent, ExponentSpread)] : [];

    /// <summary>Free space.</summary>
    /// <param name="distancesMetres">Length of each link, metres.</param>
    /// <param name="freeSpaceDb">Free-space loss of each link, dB.</param>
    public static DistancePowerLaw FreeSpace(IReadOnlyList<double> distancesMetres, IReadOnlyList<double> freeSpaceDb) =>
        new(distancesMetres, freeSpaceDb, false);

    /// <summary>A free exponent beyond one metre.</summary>
    /// <param name="distancesMetres">Length of each link, metres.</param>
    /// <param name="freeSpaceDb">Free-space loss of each link, dB.</param>
    public static DistancePowerLaw FreeExponent(IReadOnlyList<double> distancesMetres, IReadOnlyList<double> freeSpaceDb) =>
        new(distancesMetres, freeSpaceDb, true);

    /// <inheritdoc/>
    public double PathLossDb(int link, ReadOnlySpan<double> shiftsDb, Span<double> gradient)
    {
        double loss = freeSpaceDb[link];
        if (!isExponentFree)
        {
            return loss;
        }

        // Nearer than a metre the law is free space whatever the exponent.
        gradient[0] = Math.Max(0, 10 * Math.Log10(Math.Max(1, distancesMetres[link])));
        return loss + (shiftsDb[0] * gradient[0]);
    }
}
