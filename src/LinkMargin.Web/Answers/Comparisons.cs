using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Reports.Pictures;
using LinkMargin.Reports.Words;
using LinkMargin.Web.Houses;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Answers;

/// <summary>Compares all spots of a house, once per state of the house for all pages.</summary>
/// <param name="models">Models of houses.</param>
/// <param name="inFile">The margins with the house as in its file.</param>
/// <param name="confidence">Share of cases in which the margin to count on is reached, above 0 and below 1.</param>
internal sealed class Comparisons(Models models, FileFigures inFile, double confidence)
{
    private const string NothingToCompare = "The house has no spot that a seat plays at: add 'spots' and 'seats' to its file";

    private readonly Lock gate = new();
    private (int Version, Task<Comparison> Task)? last;

    /// <summary>The comparison for a state.</summary>
    public Task<Comparison> Of(HouseState state)
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

    private Comparison Compare(HouseState state)
    {
        House house = state.Now.House;
        bool isAsInFile = FileFigures.IsAsInFile(state);
        LinkModel model = models.For(house, state.Occupied);
        HouseUncertainty uncertainty = isAsInFile
            ? inFile.Of(state)
            : HouseUncertainty.Of(model, house.Spots, house.Seats, state.Now.Uncertainty, confidence);
        Ranking ranking = RankingOf(house, model, uncertainty);
        string? before = isAsInFile ? null : FindingOf(RankingOf(state.InFile.House, models.For(state.InFile.House, []), inFile.Of(state)), inFile.Of(state));
        if (ranking.Scores.Count == 0)
        {
            return new Comparison(ranking, new ComparisonMessage(state.Version, NothingToCompare, [], [], before));
        }

        // The measurement that would settle a close call takes as long as everything else, and the page has no room to show it.
        CloseCall call = CallOf(ranking, uncertainty);
        return new Comparison(ranking, new ComparisonMessage(
            state.Version,
            FindingOf(ranking, uncertainty),
            [.. new VerdictSentences(house, ranking) { Call = call }.All],
            [.. ranking.Scores.Select(score => Of(state, uncertainty, call, score, isAsInFile))],
            before));
    }

    private static Ranking RankingOf(House house, LinkModel model, HouseUncertainty uncertainty) => Ranking.Of(
    [
        .. house.Spots.Select(spot => (Spot: spot, Seats: house.Seats.Where(seat => seat.IsPlayedAt(spot)).ToArray()))
            .Where(pair => pair.Seats.Length > 0)
            .Select(pair => new SpotScore(pair.Spot, LinkEvaluation.Budgets(model, pair.Spot, pair.Seats), uncertainty.AtConfidence)),
    ]);

    private static string FindingOf(Ranking ranking, HouseUncertainty uncertainty) => ranking.Scores.Count == 0
        ? NothingToCompare
        : MapFindings.OfSpots(ranking, isOfAll: true)
            + (ranking.Scores.Count > 1 ? $". Probability of being the best spot: {UncertaintyWords.Likely(CallOf(ranking, uncertainty).ProbabilityBest(ranking.Scores[0]))}" : "");

    private static CloseCall CallOf(Ranking ranking, HouseUncertainty uncertainty)
    {
        IReadOnlyList<double> best = uncertainty.ProbabilitiesBest(ranking.Scores);
        return new CloseCall(ranking, best, [.. ranking.Scores.Where((_, i) => i > 0 && best[i] > best[0] / 2)], null);
    }

    private SpotFigures Of(HouseState state, HouseUncertainty uncertainty, CloseCall call, SpotScore score, bool isAsInFile) => new(
        score.Spot.Name,
        state.Now.House.Levels[score.Spot.LevelIndex].Name,
        score.SeatsPassing,
        score.Seats,
        MapFindings.Weakest(score),
        UncertaintyWords.Likely(call.ProbabilityBest(score)),
        score.PassesAll,
        [.. score.Budgets.Select(budget => SeatFigures.Of(
            uncertainty, score.Spot, budget.Seat, isAsInFile ? null : inFile.CountOnDb(state, score.Spot.Name, budget.Seat.Name)))]);
}

/// <summary>A comparison and its message.</summary>
/// <param name="Ranking">The spots, best first.</param>
/// <param name="Message">The message about it.</param>
internal sealed record Comparison(Ranking Ranking, ComparisonMessage Message);
