namespace LinkMargin.Plots.Fits;

/// <summary>One law against the readings.</summary>
/// <param name="Title">What law it is.</param>
/// <param name="Figures">How well it does, in a few words.</param>
/// <param name="Points">The readings.</param>
public sealed record FitPanel(string Title, string Figures, IReadOnlyList<FitPoint> Points);
