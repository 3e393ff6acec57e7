using LinkMargin.Engine.Runs;

namespace LinkMargin.Plots.Runs;

/// <summary>A cable run to draw.</summary>
/// <param name="Number">Its number in the list of runs, from 1.</param>
/// <param name="Route">Its route.</param>
public sealed record DrawnRun(int Number, Route Route)
{
    /// <summary>The new runs of a spot, numbered as in its pull sheet.</summary>
    public static IReadOnlyList<DrawnRun> Of(SpotRuns runs)
    {
        ArgumentNullException.ThrowIfNull(runs);
        return [.. runs.Runs.Select((run, i) => (run, i)).Where(pair => pair.run.Route is not null).Select(pair => new DrawnRun(pair.i + 1, pair.run.Route!))];
    }
}
