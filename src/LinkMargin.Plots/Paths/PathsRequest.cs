using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Runs;

namespace LinkMargin.Plots.Paths;

/// <summary>Everything a picture of one link's paths shows.</summary>
/// <param name="House">The house.</param>
/// <param name="Spot">Where the console stands.</param>
/// <param name="Seat">Where the player sits.</param>
/// <param name="Paths">The paths to draw, strongest first, at least one.</param>
/// <param name="TotalLoss">Loss of all paths together, a figure in dB.</param>
/// <param name="Title">One line above the plans.</param>
/// <param name="Caption">A sentence or two at the foot.</param>
public sealed record PathsRequest(
    House House, Spot Spot, Seat Seat, IReadOnlyList<PathEntry> Paths, string TotalLoss, string Title, string Caption)
{
    /// <summary>The unit of axes and scale bar.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Metre;

    /// <summary>Other seats with people who obstruct other links.</summary>
    public IReadOnlyList<Seat> Occupied { get; init; } = [];

    /// <summary>Cable runs to draw on the section.</summary>
    public IReadOnlyList<DrawnRun> Runs { get; init; } = [];

    /// <summary>What the list leaves out, in a sentence; empty where it leaves nothing out.</summary>
    public string NotDrawn { get; init; } = "";
}

/// <summary>One path to draw, with what the list under the plan says of it.</summary>
/// <param name="Number">Its number, 1 for the strongest.</param>
/// <param name="Path">The path.</param>
/// <param name="Share">Its share of the power that arrives, 0 to 1; decides how wide it is drawn.</param>
/// <param name="Words">What it passes, in words.</param>
/// <param name="Length">Its length with unit; empty where it has none.</param>
/// <param name="Loss">Its loss, a figure in dB.</param>
/// <param name="ShareText">Its share with unit.</param>
public sealed record PathEntry(
    int Number, PathBudget Path, double Share, string Words, string Length, string Loss, string ShareText);
