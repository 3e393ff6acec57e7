namespace LinkMargin.Engine.Fitting;

/// <summary>
/// Path losses of a set of links as functions of unknown shifts: of the losses of materials in the house's own model, of
/// an exponent in a plain law of distance. The estimator knows nothing else of propagation.
/// </summary>
public interface IPathLossModel
{
    /// <summary>How many shifts there are.</summary>
    public int ParameterCount { get; }

    /// <summary>Path loss of a link, dB, and how it changes with each shift.</summary>
    /// <param name="link">Which link.</param>
    /// <param name="shiftsDb">What each material loses more than its table says, dB.</param>
    /// <param name="gradient">Takes the derivatives of the path loss by the shifts; all are written.</param>
    public double PathLossDb(int link, ReadOnlySpan<double> shiftsDb, Span<double> gradient);
}
