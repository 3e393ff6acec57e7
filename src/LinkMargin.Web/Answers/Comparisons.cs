using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Reports.Pictures;
using LinkMargin.Reports.Words;
using LinkMargin.Web.Houses;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Answers;

/// <summary>All spots of a house compared, once for each moment of the house, whoever asks.</summary>
/// <param name="models">Houses made ready.</param>
/// <param name="figures">The seats' figures.</param>
/// <param name="confidence">How often a margin that is counted on is exceeded, above 0 and below 1.</param>
internal sealed class Comparisons(Models models, SeatFigures figures, double confidence)
{
    private readonly Lock gate = new();
    private (int Version, Task<ComparisonMessage> Task)? last;

    /// <summary>The comparison of a moment.</summary>
    public Task<ComparisonMessage> Of(HouseState state)
    {
        lock (gate)
        {
            if (last is not { } known || known.Version != state.Version)
            {
                last = known = (state.Version, Task.Run(() => Compare(state)));
            }

            return known.Task;
        }
    }

    private ComparisonMessage Compare(HouseState state)
    {
        House house = state.Now.House;
        LinkModel model = models.For(house, state.Occupied);
        var uncertainty = HouseUncertainty.Of(model, house.Spots, house.Seats, state.Now.Uncertainty, confidence);
        Ranking ranking = Ranking.Of(
        [
            .. house.Spots.Select(spot => (Spot: spot, Seats: house.Seats.Where(seat => seat.IsPlayedAt(spot)).ToArray()))
                .Where(pair => pair.Seats.Length > 0)
                .Select(pair => new SpotScore(pair.Spot, LinkEvaluation.Budgets(model, pair.Spot, pair.Seats), uncertainty.AtConfidence)),
        ]);
        if (ranking.Scores.Count == 0)
        {
            return new ComparisonMessage(state.Version, "The house has no spot that a seat plays at: add 'spots' and 'seats' to its file", [], [], null);
        }

        // The measurement that would settle a close call takes as long as all else; the page has no room for it.
        var call = new CloseCall(ranking, uncertainty.ProbabilitiesBest(ranking.Scores), Rivals(), null);
        string finding = MapFindings.OfSpots(ranking, isOfAll: true)
            + (ranking.Scores.Count > 1 ? $". Probability of being the best spot: {UncertaintyWords.Likely(call.ProbabilityBest(ranking.Scores[0]))}" : "");
        return new ComparisonMessage(
            state.Version,
            finding,
            [.. new VerdictSentences(house, ranking) { Call = call }.All],
            [.. ranking.Scores.Select(score => Of(state, uncertainty, call, score))],
            null);

        SpotScore[] Rivals()
        {
            IReadOnlyList<double> best = uncertainty.ProbabilitiesBest(ranking.Scores);
            return [.. ranking.Scores.Where((_, i) => i > 0 && best[i] > best[0] / 2)];
        }
    }

    private SpotFigures Of(HouseState state, HouseUncertainty uncertainty, CloseCall call, SpotScore score) => new(
        score.Spot.Name,
        state.Now.House.Levels[score.Spot.LevelIndex].Name,
        MapFindings.Passing(score),
        MapFindings.Weakest(score),
        UncertaintyWords.Likely(call.ProbabilityBest(score)),
        score.PassesAll,
        [.. score.Budgets.Select(budget => SeatFigures.Of(uncertainty, score.Spot, budget.Seat, figures.InFileDb(state, score.Spot.Name, budget.Seat.Name)))]);
}
