namespace LinkMargin.Engine.Fitting;

/// <summary>
/// Path loss by distance alone, the baseline that a model of the house has to beat: free space, or free space up to one
/// metre and a fitted number of decibels per decade beyond.
/// </summary>
public sealed class DistancePowerLaw : IPathLossModel
{
    private const double FreeSpaceExponent = 2;

    /// <summary>
    /// Exponents in buildings lie between 1.8 and 3.6 (Rahman, Abbas and Ismail, several multi-floor buildings at 2.4 GHz,
    /// abstract). A spread this wide hardly affects them.
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

    /// <summary>Its parameters: none, or an exponent that is never below 0.</summary>
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

        // Within a metre the law is free space, whatever the exponent.
        gradient[0] = Math.Max(0, 10 * Math.Log10(Math.Max(1, distancesMetres[link])));
        return loss + (shiftsDb[0] * gradient[0]);
    }
}

/// <summary>A plain law fitted to the same measurements, with the same offsets for the same devices.</summary>
/// <param name="Fit">Its fit.</param>
/// <param name="LeaveOneOutDb">Its residuals on measurements it has not seen, dB.</param>
public sealed record Baseline(LossFit Fit, IReadOnlyList<double?> LeaveOneOutDb)
{
    /// <summary>
    /// Its scatter does not follow the stated noise, so it is fitted as if every measurement were good with this noise: least
    /// squares, apart from the priors. 8 dB: shadowing in houses, Recommendation ITU-R P.1238, from memory.
    /// </summary>
    private const double ScatterDb = 8;

    /// <summary>Fits a law.</summary>
    /// <param name="law">The law.</param>
    /// <param name="problem">Has the measurements and the devices.</param>
    public static Baseline Of(DistancePowerLaw law, FitProblem problem)
    {
        ArgumentNullException.ThrowIfNull(law);
        ArgumentNullException.ThrowIfNull(problem);
        LossFit fit = LossFit.Of(new FitProblem(
            law, law.Priors, problem.Devices, [.. problem.Measurements.Select(r => r with { NoiseDb = ScatterDb })], BadMeasurements.None));
        return new Baseline(fit, LeaveOneOut.ResidualsDb(fit));
    }
}

/// <summary>
/// Path losses of a set of links as functions of unknown shifts: of the losses of materials in a model of the house, or of
/// the exponent in a distance power law. The estimator knows nothing else about propagation.
/// </summary>
public interface IPathLossModel
{
    /// <summary>How many shifts there are.</summary>
    public int ParameterCount { get; }

    /// <summary>Path loss of a link, dB, and how it changes with each shift.</summary>
    /// <param name="link">Which link.</param>
    /// <param name="shiftsDb">How much more each material loses than its table says, dB.</param>
    /// <param name="gradient">Receives the derivatives of the path loss by the shifts; all are written.</param>
    public double PathLossDb(int link, ReadOnlySpan<double> shiftsDb, Span<double> gradient);
}
