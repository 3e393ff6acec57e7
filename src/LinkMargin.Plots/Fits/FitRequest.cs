namespace LinkMargin.Plots.Fits;

/// <summary>What a picture of a fit shows: the same readings against several laws.</summary>
/// <param name="Title">Above the panels.</param>
/// <param name="Caption">Below them.</param>
/// <param name="Panels">One for each law, at least one.</param>
public sealed record FitRequest(string Title, string Caption, IReadOnlyList<FitPanel> Panels)
{
    /// <summary>How far a good reading lies from a law that is right, one standard deviation, dB.</summary>
    public required double NoiseDb { get; init; }
}
