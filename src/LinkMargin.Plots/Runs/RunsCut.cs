using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;

namespace LinkMargin.Plots.Runs;

/// <summary>Where a section shows the new runs of a spot.</summary>
/// <param name="From">The console's place, or where the first run begins that has one.</param>
/// <param name="To">The end of a run that is farthest from there on the plan.</param>
/// <param name="FromConsole">Whether it begins at the console.</param>
public sealed record RunsCut(CablePlace From, CablePlace To, bool FromConsole)
{
    // Ends nearer to each other on the plan give no cut, metres.
    private const double LeastMetres = 0.3;

    /// <summary>The cut for a spot's runs; null where no new run leads from one place of the plan to another.</summary>
    public static RunsCut? Of(SpotRuns runs)
    {
        ArgumentNullException.ThrowIfNull(runs);
        CablePlace[] ends = [.. runs.Runs.Where(run => run.Route is not null).SelectMany(run => new[] { run.Connection.From, run.Connection.To })];
        if (ends.Length == 0)
        {
            return null;
        }

        CablePlace? console = ends.FirstOrDefault(end => end.Name == runs.Spot.Name && end.LevelIndex == runs.Spot.LevelIndex);
        CablePlace from = console ?? ends[0], to = ends.MaxBy(end => end.Plan.DistanceTo(from.Plan))!;
        return to.Plan.DistanceTo(from.Plan) < LeastMetres ? null : new RunsCut(from, to, console is not null);
    }
}
