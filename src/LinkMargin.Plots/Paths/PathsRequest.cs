using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Runs;

namespace LinkMargin.Plots.Paths;

/// <summary>Everything in a picture of one link's paths.</summary>
/// <param name="House">The house.</param>
/// <param name="Spot">Where the console stands.</param>
/// <param name="Seat">Where the player sits.</param>
/// <param name="Paths">The paths to draw, strongest first, at least one.</param>
/// <param name="TotalLoss">Total loss of all paths, a number in dB.</param>
/// <param name="Title">One line above the plans.</param>
/// <param name="Caption">A sentence or two at the bottom.</param>
public sealed record PathsRequest(
    House House, Spot Spot, Seat Seat, IReadOnlyList<PathEntry> Paths, string TotalLoss, string Title, string Caption)
{
    /// <summary>The unit of axes and scale bar.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Metre;

    /// <summary>Other seats with people who obstruct other links.</summary>
    public IReadOnlyList<Seat> Occupied { get; init; } = [];

    /// <summary>Cable runs to draw on the section.</summary>
    public IReadOnlyList<DrawnRun> Runs { get; init; } = [];

    /// <summary>A sentence about paths that the list omits; empty if there are none.</summary>
    public string NotDrawn { get; init; } = "";
}

/// <summary>One path to draw, with its text in the list below the plan.</summary>
/// <param name="Number">Its number, 1 for the strongest.</param>
/// <param name="Path">The path.</param>
/// <param name="Share">Its share of the received power, 0 to 1; decides how wide it is drawn.</param>
/// <param name="Words">What it passes through, in words.</param>
/// <param name="Length">Its length with unit; empty for a path without one.</param>
/// <param name="Loss">Its loss, a number in dB.</param>
/// <param name="ShareText">Its share with unit.</param>
public sealed record PathEntry(
    int Number, PathBudget Path, double Share, string Words, string Length, string Loss, string ShareText);
