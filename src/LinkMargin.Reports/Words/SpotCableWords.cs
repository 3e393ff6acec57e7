using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Runs;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Reports.Words;

/// <summary>What a spot asks for in video cables, in sentences.</summary>
internal static class SpotCableWords
{
    /// <summary>All that is asked for, in one sentence.</summary>
    public static string Summary(SpotRuns runs, LengthFormat lengths) => runs.Runs.Count == 0
        ? $"No seat that plays at '{runs.Spot.Name}' faces a display of the house file, so the console needs no video cable."
        : $"A console at '{runs.Spot.Name}' needs {Cost(runs, lengths)}"
            + (Shortcomings(runs) is { Length: > 0 } lacking ? $". {lacking}" : ".");

    /// <summary>Which runs cannot be made, and which can but do not carry the picture that is wanted, or only perhaps; empty where all is well.</summary>
    public static string Shortcomings(SpotRuns runs)
    {
        string[] sentences =
        [
            Numbers(runs, run => run.Gap != RunGap.None) is { } missing ? $"Cannot be made with what is known: {missing}; see there." : "",
            runs.Passages.Any(fit => !fit.Fits || fit.Stuck.Count > 0) ? "Not all cables fit into the passages; see there." : "",
            Numbers(runs, run => run.Gap == RunGap.None && run.Carries == Carries.No) is { } slow ? $"Can be pulled, but cannot carry the picture that is wanted: {slow}; see there." : "",
            Numbers(runs, run => run.Gap == RunGap.None && run.Carries == Carries.Borderline) is { } close ? $"Borderline for the picture: {close}; test before you pull." : "",
        ];
        return string.Join(' ', sentences.Where(sentence => sentence.Length > 0));
    }

    private static string? Numbers(SpotRuns runs, Func<Run, bool> which)
    {
        string[] numbers = [.. runs.Runs.Select((run, i) => (run, i)).Where(pair => which(pair.run)).Select(pair => FormattableString.Invariant($"R{pair.i + 1}"))];
        return numbers.Length > 0 ? string.Join(", ", numbers) : null;
    }

    /// <summary>The same in one phrase.</summary>
    public static string Cost(SpotRuns runs, LengthFormat lengths) =>
        $"{Plural.Of(runs.NewRuns, "new run")}, {lengths.Brief(runs.BuyMetres)} of cable to buy and {Plural.Of(runs.Holes, "hole")} to bore"
            + (runs.JoistHoles > 0 ? FormattableString.Invariant($", {runs.JoistHoles} of them in joists") : "");

    /// <summary>Which spots need fewer new runs than the best one for as many seats; empty where none does.</summary>
    /// <param name="ranking">The spots, best first.</param>
    /// <param name="runs">What each of them needs, in the same order.</param>
    public static string FewerRuns(Ranking ranking, IReadOnlyList<SpotRuns> runs)
    {
        int passing = ranking.Scores[0].SeatsPassing;
        string[] fewer = [.. runs.Skip(1).Where(one => one.NewRuns < runs[0].NewRuns && ranking.Scores.First(score => score.Spot == one.Spot).SeatsPassing >= passing).Select(one => $"'{one.Spot.Name}'")];
        return fewer.Length > 0 ? $"As many seats pass with fewer new runs at {string.Join(", ", fewer)}." : "";
    }
}
