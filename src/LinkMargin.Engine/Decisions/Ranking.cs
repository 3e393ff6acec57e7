using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Decisions;

/// <summary>
/// Spots from best to worst. A spot is as good as its weakest seat: the one with the least headroom (the margin to count
/// on minus what the seat requires). Equals are ordered by the share of the playing time at seats that pass, then by mean headroom, then by
/// name.
/// </summary>
/// <param name="Scores">Best first; empty where the house has no spot or no seat.</param>
public sealed record Ranking(IReadOnlyList<SpotScore> Scores)
{
    // Margins closer than this are equal: far below any effect, far above rounding.
    private const double EqualDb = 1e-9;

    /// <summary>
    /// Ranks a house's spots, each over the seats it is played from. A spot that is played from no seat is left out.
    /// </summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="by">The margin that counts; null for the median.</param>
    public static Ranking Of(LinkModel model, DecisionMargin? by = null)
    {
        House house = model.House;
        return Of(
        [
            .. house.Spots
                .Select(spot => (Spot: spot, Seats: house.Seats.Where(seat => seat.IsPlayedAt(spot)).ToArray()))
                .Where(pair => pair.Seats.Length > 0)
                .Select(pair => new SpotScore(pair.Spot, LinkEvaluation.Budgets(model, pair.Spot, pair.Seats), by)),
        ]);
    }

    /// <summary>Ranks scored spots.</summary>
    public static Ranking Of(IEnumerable<SpotScore> scores)
    {
        SpotScore[] ordered = [.. scores];
        Array.Sort(ordered, Compare);
        return new Ranking(ordered);
    }

    /// <summary>
    /// Consoles in use at once: each spot that some seats name as the one they play, over those seats alone. Empty where no seat does.
    /// </summary>
    public IReadOnlyList<SpotScore> InUse =>
        [.. Scores.Select(score => score.Over(seat => seat.Plays == score.Spot.Name)).OfType<SpotScore>()];

    /// <summary>Seats that pass at none of the spots that are played from them.</summary>
    public IReadOnlyList<Seat> SeatsNeverPassing =>
    [
        .. Scores.SelectMany(score => score.Budgets)
            .GroupBy(budget => budget.Seat.Name)
            .Where(seat => seat.All(budget => !Scores[0].By.Passes(budget)))
            .Select(seat => seat.First().Seat),
    ];

    private static int Compare(SpotScore a, SpotScore b)
    {
        int order = Descending(a.WeakestHeadroomDb, b.WeakestHeadroomDb);
        if (order == 0)
        {
            order = Descending(a.PassingShare, b.PassingShare);
        }

        if (order == 0)
        {
            order = Descending(a.MeanHeadroomDb, b.MeanHeadroomDb);
        }

        return order != 0 ? order : string.CompareOrdinal(a.Spot.Name, b.Spot.Name);
    }

    // Rounded to steps, so that "equal" is transitive and the order consistent.
    private static int Descending(double a, double b) => Math.Round(b / EqualDb).CompareTo(Math.Round(a / EqualDb));
}

/// <summary>The best spot of a ranking, and the spots it is compared with.</summary>
/// <param name="Best">First of the ranking.</param>
/// <param name="Next">Second of the ranking; null where there is only one spot.</param>
/// <param name="BestOfOtherLevels">The best spot of each level other than the chosen one's, best first.</param>
public sealed record Choice(SpotScore Best, SpotScore? Next, IReadOnlyList<SpotScore> BestOfOtherLevels)
{
    /// <summary>The next spot and the best of each other level, each once, best first.</summary>
    public IEnumerable<SpotScore> Rivals =>
        Next is null || BestOfOtherLevels.Contains(Next) ? BestOfOtherLevels : BestOfOtherLevels.Prepend(Next);

    /// <summary>How much more headroom the chosen spot has at its weakest seat than another spot at its own, dB.</summary>
    public double LeadDb(SpotScore other) => Best.WeakestHeadroomDb - other.WeakestHeadroomDb;

    /// <summary>The best spot of each level that has one, the chosen spot's level first, then best first.</summary>
    public IEnumerable<SpotScore> BestOfLevels => BestOfOtherLevels.Prepend(Best);

    /// <summary>Seats that pass at the chosen spot but not at another that is played from them too.</summary>
    public IReadOnlyList<string> SeatsLost(SpotScore other) => [.. Best.PassingSeats.Intersect(other.FailingSeats)];

    /// <summary>The choice from a ranking of at least one spot.</summary>
    public static Choice Of(Ranking ranking)
    {
        if (ranking.Scores.Count == 0)
        {
            throw new ArgumentException("There is nothing to choose from: the ranking is empty.", nameof(ranking));
        }

        SpotScore best = ranking.Scores[0];
        return new Choice(
            best,
            ranking.Scores.Skip(1).FirstOrDefault(),
            [.. ranking.Scores.Where(s => s.Spot.LevelIndex != best.Spot.LevelIndex).DistinctBy(s => s.Spot.LevelIndex)]);
    }
}
