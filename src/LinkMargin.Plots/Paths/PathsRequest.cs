using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;

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

    /// <summary>Other seats with people who stand in the way.</summary>
    public IReadOnlyList<Seat> Occupied { get; init; } = [];

    /// <summary>What the list leaves out, in a sentence; empty where it leaves nothing out.</summary>
    public string LeftOut { get; init; } = "";
}
