using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Runs;

namespace LinkMargin.Plots.Plans;

/// <summary>What a plan shows.</summary>
/// <param name="House">The house.</param>
/// <param name="Levels">Numbers of the levels from left to right, at least one; 0 is the lowest.</param>
/// <param name="Title">One line above the plans.</param>
/// <param name="Caption">One sentence below them.</param>
public sealed record PlanRequest(House House, IReadOnlyList<int> Levels, string Title, string Caption)
{
    /// <summary>The unit of axes, dimensions, areas and scale bar.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Metre;

    /// <summary>Places to measure at, drawn instead of the seats.</summary>
    public IReadOnlyList<MeasurementMark> Measurements { get; init; } = [];

    /// <summary>Cable runs to draw.</summary>
    public IReadOnlyList<DrawnRun> Runs { get; init; } = [];

    /// <summary>Two places that a section below the plans leads through, with the runs on it; null for none.</summary>
    public RunsCut? Cut { get; init; }

    /// <summary>All levels side by side, lowest on the left.</summary>
    public static PlanRequest OfAllLevels(House house, string title, string caption) =>
        new(house, [.. Enumerable.Range(0, house.Levels.Count)], title, caption);

    /// <summary>One level.</summary>
    public static PlanRequest OfLevel(House house, int levelIndex, string title, string caption) =>
        new(house, [levelIndex], title, caption);
}

/// <summary>A place to measure at.</summary>
/// <param name="LevelIndex">The level it is on; 0 is the lowest.</param>
/// <param name="Plan">Its position on the plan.</param>
/// <param name="Text">The text beside it: its number and the transmitter to use.</param>
public sealed record MeasurementMark(int LevelIndex, Point2 Plan, string Text);
