using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>What says how far a house's figures may be out, and how that is drawn.</summary>
/// <param name="Spreads">What applies apart from each material's and radio's own spread.</param>
/// <param name="Fitted">How what is still out about fitted materials hangs together; null where nothing was fitted.</param>
public sealed record UncertaintyBasis(Spreads Spreads, FittedLosses? Fitted = null)
{
    /// <summary>A margin that is counted on is exceeded so often, where nothing else is requested.</summary>
    public const double UsualConfidence = 0.9;

    /// <summary>How many draws of the house, at least 1.</summary>
    public int Draws { get; init; } = 1000;

    /// <summary>Which draws: the same seed gives the same.</summary>
    public ulong Seed { get; init; } = 1;
}
