using LinkMargin.Engine.Paths;

namespace LinkMargin.Plots.Paths;

/// <summary>One path to draw, with what the list under the plan says of it.</summary>
/// <param name="Number">Its number, 1 for the strongest.</param>
/// <param name="Path">The path.</param>
/// <param name="Share">Its share of the power that arrives, 0 to 1; decides how wide it is drawn.</param>
/// <param name="Words">Which way it takes.</param>
/// <param name="Length">Its length with unit; empty where it has none.</param>
/// <param name="Loss">Its loss, a figure in dB.</param>
/// <param name="ShareText">Its share with unit.</param>
public sealed record PathEntry(
    int Number, PathBudget Path, double Share, string Words, string Length, string Loss, string ShareText);
