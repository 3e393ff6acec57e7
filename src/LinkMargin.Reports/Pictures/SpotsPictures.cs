using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Plots.Charts;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Pictures;

/// <summary>Makes the picture of seats and spots.</summary>
internal static class SpotsPictures
{
    /// <summary>The content of the picture.</summary>
    /// <param name="loaded">The house.</param>
    /// <param name="ranking">Its spots, best first; at least one.</param>
    /// <param name="uncertainty">The uncertainty of its links.</param>
    /// <param name="call">How likely each spot is the best.</param>
    public static SpotsRequest RequestOf(LoadedHouse loaded, Ranking ranking, HouseUncertainty uncertainty, CloseCall call)
    {
        House house = loaded.House;
        SpotScore best = ranking.Scores[0];
        return new SpotsRequest(
            $"{house.Name}: {SeatWords.Passing(best)} at '{best.Spot.Name}', which ranks first",
            $"{loaded.WhatIfCaption}'{best.Spot.Name}' is the best spot with a probability of {UncertaintyWords.Likely(call.ProbabilitiesBest[0])}. "
                + "A seat passes if its margin to count on reaches the required margin. Planning estimates.",
            [.. ranking.Scores.Select(score => $"{score.Spot.Name} ({house.Levels[score.Spot.LevelIndex].Name})")],
            [.. house.Seats.Select(seat => SeatOf(house, seat, ranking, uncertainty)).Where(seat => seat.Bars.Count > 0)])
        {
            Reached = UncertaintyWords.Reached(uncertainty.Confidence),
        };
    }

    private static SpotsSeat SeatOf(House house, Seat seat, Ranking ranking, HouseUncertainty uncertainty) => new(
        seat.Name,
        FormattableString.Invariant($"{house.Levels[seat.LevelIndex].Name}, requires {seat.RequiredDb:0.#########} dB"),
        seat.RequiredDb,
        [
            .. ranking.Scores.Select((score, i) => (Budget: score.With(seat), Spot: i, score.By))
                .Where(one => one.Budget is not null)
                .Select(one => BarOf(one.Budget!, one.Spot, one.By.Passes(one.Budget!), uncertainty)),
        ]);

    private static SpotBar BarOf(LinkBudget budget, int spot, bool passes, HouseUncertainty uncertainty) => new(
        spot, uncertainty.MarginAtConfidenceDb(budget), uncertainty.With(budget).MedianDb, uncertainty.With(budget).ExceededDb(1 - uncertainty.Confidence), passes);
}
