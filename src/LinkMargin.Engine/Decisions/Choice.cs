namespace LinkMargin.Engine.Decisions;

/// <summary>The spot a ranking would choose, and the spots it is judged against.</summary>
/// <param name="Best">First of the ranking.</param>
/// <param name="Next">Second of the ranking; null where there is only one spot.</param>
/// <param name="BestOfOtherLevels">The best spot of each level other than the chosen one's, best first.</param>
public sealed record Choice(SpotScore Best, SpotScore? Next, IReadOnlyList<SpotScore> BestOfOtherLevels)
{
    /// <summary>The next spot and the best of each other level, each once, best first.</summary>
    public IEnumerable<SpotScore> Rivals =>
        Next is null || BestOfOtherLevels.Contains(Next) ? BestOfOtherLevels : BestOfOtherLevels.Prepend(Next);

    /// <summary>How much more headroom the chosen spot has at its worst seat than another spot at its own, dB.</summary>
    public double LeadDb(SpotScore other) => Best.WorstHeadroomDb - other.WorstHeadroomDb;

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
