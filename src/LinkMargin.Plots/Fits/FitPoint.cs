namespace LinkMargin.Plots.Fits;

/// <summary>One reading against what a law predicts.</summary>
/// <param name="ReadDbm">The level read, dBm; where nothing was heard, the level below which nothing is.</param>
/// <param name="PredictedDbm">The level predicted, dBm.</param>
/// <param name="IsHeard">Whether there was a level.</param>
/// <param name="LooksBad">Whether the reading looks wrong.</param>
/// <param name="Label">Its name where it is to be written; null where it is not.</param>
public sealed record FitPoint(double ReadDbm, double PredictedDbm, bool IsHeard, bool LooksBad, string? Label = null);
