using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Cli.Maps;

/// <summary>Which maps are wanted, and how.</summary>
/// <param name="Spots">The spots, at least one.</param>
/// <param name="Levels">The levels' numbers, at least one.</param>
/// <param name="CellMetres">Side of a cell, metres.</param>
/// <param name="HandsMetres">Height of the hands above the floor, metres.</param>
/// <param name="Folder">Where the files go, as it was typed.</param>
internal sealed record MapOrder(
    IReadOnlyList<Spot> Spots, IReadOnlyList<int> Levels, double CellMetres, double HandsMetres, string Folder)
{
    /// <summary>Share of cases in which the margin to count on is reached.</summary>
    public double Confidence { get; init; } = UncertaintyBasis.UsualConfidence;

    /// <summary>Whether the median is shown instead of the margin to count on.</summary>
    public bool ShowsMedian { get; init; }

    /// <summary>Whether the numbers are wanted as CSV.</summary>
    public bool WithCsv { get; init; }

    /// <summary>Whether the numbers are wanted as GeoJSON.</summary>
    public bool WithGeoJson { get; init; }

    /// <summary>Whether files that this program did not write may be replaced.</summary>
    public bool Force { get; init; }
}
