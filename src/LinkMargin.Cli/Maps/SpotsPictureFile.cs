using LinkMargin.Cli.Commands;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Output;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Plots.Charts;

namespace LinkMargin.Cli.Maps;

/// <summary>The picture of seats against spots.</summary>
internal static class SpotsPictureFile
{
    /// <summary>Draws it and writes it.</summary>
    /// <param name="invocation">Where the command stands.</param>
    /// <param name="loaded">The house.</param>
    /// <param name="ranking">Its spots, best first; at least one.</param>
    /// <param name="uncertainty">How sure its links are.</param>
    /// <param name="call">Whether the first spot can be told from the others.</param>
    /// <param name="path">The file.</param>
    /// <param name="force">Whether a file that this program did not write may be replaced.</param>
    public static void Write(
        Invocation invocation, LoadedHouse loaded, Ranking ranking, HouseUncertainty uncertainty, CloseCall call, string path, bool force)
    {
        SpotsRequest request = RequestOf(loaded, ranking, uncertainty, call);
        invocation.Files.Write(path, SpotsPicture.Render(request, SpotsPicture.FittingSize(request)), force);
    }

    /// <summary>What the picture shows.</summary>
    internal static SpotsRequest RequestOf(LoadedHouse loaded, Ranking ranking, HouseUncertainty uncertainty, CloseCall call)
    {
        House house = loaded.House;
        SpotScore best = ranking.Scores[0];
        string seats = FormattableString.Invariant($"{best.SeatsPassing} of {best.Seats} seats can count on what they ask for");
        return new SpotsRequest(
            $"{house.Name}: every seat with every spot",
            $"{loaded.WhatIfCaption}First of the ranking: {best.Spot.Name}, where {seats}; it is the best spot with a probability of {UncertaintyWords.Likely(call.ProbabilitiesBest[0])}. "
                + "These figures are estimates for planning.",
            [.. ranking.Scores.Select(score => $"{score.Spot.Name} ({house.Levels[score.Spot.LevelIndex].Name})")],
            [.. house.Seats.Select(seat => SeatOf(house, seat, ranking, uncertainty)).Where(seat => seat.Bars.Count > 0)])
        {
            Often = UncertaintyWords.Often(uncertainty.Confidence),
        };
    }

    private static SpotsSeat SeatOf(House house, Seat seat, Ranking ranking, HouseUncertainty uncertainty) => new(
        seat.Name,
        FormattableString.Invariant($"{house.Levels[seat.LevelIndex].Name}, asks for {seat.RequiredDb:0.#########} dB"),
        seat.RequiredDb,
        [
            .. ranking.Scores.Select((score, i) => (Budget: score.With(seat), Spot: i, score.By))
                .Where(one => one.Budget is not null)
                .Select(one => BarOf(one.Budget!, one.Spot, one.By.Passes(one.Budget!), uncertainty)),
        ]);

    private static SpotBar BarOf(LinkBudget budget, int spot, bool passes, HouseUncertainty uncertainty) => new(
        spot, uncertainty.MarginAtConfidenceDb(budget), uncertainty.With(budget).MedianDb, uncertainty.With(budget).ExceededDb(1 - uncertainty.Confidence), passes);
}
