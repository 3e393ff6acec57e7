using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Marks;
using LinkMargin.Plots.Runs;
using SkiaSharp;

namespace LinkMargin.Plots.Paths;

/// <summary>What an upright section shows: a cut from one place to another, with paths and cable runs projected on it.</summary>
/// <param name="House">The house.</param>
/// <param name="From">The place at the left.</param>
/// <param name="To">The place at the right.</param>
internal sealed record SectionRequest(House House, SectionEnd From, SectionEnd To)
{
    /// <summary>The paths, strongest first.</summary>
    public IReadOnlyList<PathEntry> Paths { get; init; } = [];

    /// <summary>The cable runs.</summary>
    public IReadOnlyList<DrawnRun> Runs { get; init; } = [];

    /// <summary>What runs are drawn in: beside paths, not in their colour.</summary>
    public SKColor RunColour { get; init; } = Palette.Ink;

    /// <summary>The unit of axes and heights.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Metre;

    /// <summary>The section of a link.</summary>
    public static SectionRequest Of(PathsRequest request) => new(
        request.House,
        new(MarkKind.SpotHere, request.Spot.Name, request.Spot.LevelIndex, request.Spot.Plan, request.Spot.HeightMetres),
        new(MarkKind.SeatPasses, request.Seat.Name, request.Seat.LevelIndex, request.Seat.Plan, request.Seat.HandsMetres))
    {
        Paths = request.Paths,
        Runs = request.Runs,
        Unit = request.Unit,
    };

    /// <summary>What is projected on it, in words.</summary>
    public string Projected => string.Join(" and ", new[] { Paths.Count > 0 ? "paths" : "", Runs.Count > 0 ? "new cable runs" : "" }.Where(what => what.Length > 0));
}

/// <summary>A place that a section leads to.</summary>
/// <param name="Kind">Its mark.</param>
/// <param name="Name">Its name.</param>
/// <param name="LevelIndex">The level it is on.</param>
/// <param name="Plan">Where on the plan.</param>
/// <param name="HeightMetres">Height above the level's floor, metres.</param>
internal sealed record SectionEnd(MarkKind Kind, string Name, int LevelIndex, Point2 Plan, double HeightMetres)
{
    /// <summary>Where it is in a house.</summary>
    public Point3 In(House house) => Plan.At(house.Levels[LevelIndex].ElevationMetres + HeightMetres);
}
