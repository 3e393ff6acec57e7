using LinkMargin.Engine.Runs;
using LinkMargin.Files.Json;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Words;
using LinkMargin.Web.Houses;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Answers;

/// <summary>The video cables that each spot needs, planned once per state of the house for all pages.</summary>
/// <param name="comparisons">The spots, best first.</param>
internal sealed class CableCosts(Comparisons comparisons)
{
    private readonly Lock gate = new();
    private (int Version, Task<CablesMessage> Task)? last;

    /// <summary>The cables for a state; empty if the house has no display.</summary>
    public Task<CablesMessage> Of(HouseState state)
    {
        lock (gate)
        {
            if (last is not { } known || known.Version != state.Version)
            {
                last = known = (state.Version, Task.Run(() => Plan(state)));
            }

            return known.Task;
        }
    }

    private async Task<CablesMessage> Plan(HouseState state)
    {
        var ranking = (await comparisons.Of(state)).Ranking;
        SpotRuns[] runs = RankedRuns.Of(state.Now.House, ranking);
        return new CablesMessage(state.Version, [.. runs.Select(one => Of(state.Now, one))], runs.Length == 0 ? "" : SpotCableWords.FewerRuns(ranking, runs));
    }

    private static SpotCables Of(LoadedHouse loaded, SpotRuns runs)
    {
        var words = new RunWords(loaded);
        var cost = CablesDocument.Of(runs);
        return new SpotCables(
            runs.Spot.Name,
            cost.NewRuns,
            loaded.Lengths.Brief(cost.BuyM),
            cost.Holes,
            cost.Carries,
            cost.IsComplete,
            SpotCableWords.Summary(runs, loaded.Lengths),
            [
                .. runs.Runs.Select(run => $"{run.Connection.FromName} to {run.Connection.ToName}: {words.Means(run)}"),
                .. runs.Splitter is { } splitter ? [RunWords.Splitter(splitter)] : Array.Empty<string>(),
                .. runs.Passages.Select(words.Fit),
            ]);
    }
}
