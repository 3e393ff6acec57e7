using System.Globalization;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Words;

/// <summary>Which spot to choose and what decides it, in sentences; the figures are differences of the printed ones.</summary>
/// <param name="house">The house.</param>
/// <param name="ranking">Its ranking, of at least one spot.</param>
internal sealed class VerdictSentences(House house, Ranking ranking)
{
    private readonly Choice choice = Choice.Of(ranking);

    /// <summary>How likely each spot is the best; null if that was not computed.</summary>
    public CloseCall? Call { get; init; }

    /// <summary>All of them, each a paragraph.</summary>
    public IEnumerable<string> All =>
    [
        $"{Chosen} {Against}",
        .. HowClear,
        .. AtOnce,
        .. NeverPassing,
        .. Cautions.About(ranking.Scores.Select(score => ($"'{score.Spot.Name}' to '{score.Weakest.Seat.Name}'", score.Weakest.Cautions))),
        Cautions.Estimates,
    ];

    private string Chosen
    {
        get
        {
            SpotScore best = choice.Best;
            LinkBudget weakest = best.Weakest;
            string seat = $"Its weakest seat, '{weakest.Seat.Name}', has {Tenths.ShowMargin(best.By.MarginDb(weakest), weakest.RequiredDb)} dB{ToCountOn}, "
                + $"{Headroom.Words(best)} the required {Tenths.ShowRequired(weakest.RequiredDb)} dB.";
            string every = SomePlayElsewhere ? "every seat that plays there" : "every seat";
            return best.PassesAll
                ? $"Choose {Named(best)}: {every} passes. {seat}"
                : $"No spot works for every seat{(SomePlayElsewhere ? " that plays there" : "")}. Best choice: {Named(best)}; {SeatWords.Passing(best)}{Share(best)}. {seat}";
        }
    }

    private bool IsAtConfidence => choice.Best.By != DecisionMargin.Median;

    private string ToCountOn => IsAtConfidence ? " to count on" : "";

    private string Surely => IsAtConfidence ? " by the margin to count on" : "";

    private string Against => choice.Next is { } next
        ? $"Next best: {Named(next)}{(choice.BestOfOtherLevels.Contains(next) ? ", the best of its level" : "")}, {Behind(next)}."
        : "There is no other spot to compare with.";

    private IEnumerable<string> HowClear
    {
        get
        {
            if (Call is null || ranking.Scores.Count < 2)
            {
                yield break;
            }

            SpotScore best = choice.Best, likeliest = LikeliestOther;
            string first = $"Probability of being the best spot: '{best.Spot.Name}' {Likely(best)}";
            yield return Call.Rivals.Count == 0
                ? $"{first}, '{likeliest.Spot.Name}' {Likely(likeliest)}."
                : $"Too close to call. {first}, {string.Join(", ", Call.Rivals.Select(rival => $"'{rival.Spot.Name}' {Likely(rival)}"))}.{Settling}";
            if (Overtaken(likeliest) is { } ahead)
            {
                yield return $"'{likeliest.Spot.Name}' ({Likely(likeliest)}) ranks below '{ahead.Spot.Name}' ({Likely(ahead)}){Surely}, but its margin is less certain "
                    + "or less correlated with the other spots, so it turns out best more often.";
            }
        }
    }

    // By the probabilities as they are printed: equals stay in the ranking's order.
    private SpotScore LikeliestOther => ranking.Scores.Skip(1).MaxBy(score => UncertaintyWords.Percent(Call!.ProbabilityBest(score)))!;

    // The first spot that is ranked above another though it is best less often; null if there is none.
    private SpotScore? Overtaken(SpotScore other) => ranking.Scores
        .TakeWhile(score => score != other)
        .FirstOrDefault(score => UncertaintyWords.Percent(Call!.ProbabilityBest(score)) < UncertaintyWords.Percent(Call.ProbabilityBest(other)));

    private string Settling => Call?.Settling is { } measurement
        ? $" The measurement that would separate them best: transmit from '{measurement.Transmitter.Name}', receive {measurement.Where} on level '{house.Levels[measurement.LevelIndex].Name}'"
            + string.Create(CultureInfo.InvariantCulture, $" (leaves {100 * measurement.UncertaintyLeft:0} % of the uncertainty on average). 'linkmargin fit' reads measurements.")
        : "";

    private string Likely(SpotScore score) => UncertaintyWords.Likely(Call!.ProbabilityBest(score));

    private IEnumerable<string> AtOnce => ranking.InUse is { Count: > 0 } consoles
        ?
        [
            $"Consoles in use at the same time, each with the seats that play it: {string.Join("; ", consoles.Select(console =>
                $"'{console.Spot.Name}': {SeatWords.Passing(console)}, the weakest, '{console.Weakest.Seat.Name}', is {Headroom.Words(console)} the required margin"))}. Interference between consoles is not computed.",
        ]
        : [];

    private IEnumerable<string> NeverPassing => ranking.SeatsNeverPassing is { Count: > 0 } seats
        ? [$"Below the required margin at every spot: {string.Join(", ", seats.Select(s => $"'{s.Name}'"))}."]
        : [];

    private bool SomePlayElsewhere => choice.Best.Budgets.Count < house.Seats.Count;

    private string Behind(SpotScore other)
    {
        long lead = Headroom.TenthsOf(choice.Best) - Headroom.TenthsOf(other);
        string weakest = $"at its weakest seat, '{other.Weakest.Seat.Name}' ({Headroom.Words(other)} the required margin)";
        return lead <= 0 ? $"equal within 0.1 dB {weakest}" : $"{Tenths.Show(lead)} dB worse {weakest}";
    }

    // Where some seats are used more than others, the share of playing time says more than the number of seats.
    private static string Share(SpotScore score) => score.Budgets.Select(b => b.Seat.UsedDays).Distinct().Count() > 1
        ? string.Create(CultureInfo.InvariantCulture, $" ({100 * score.PassingShare:0} % of the playing time)")
        : "";

    private string Named(SpotScore score) => $"'{score.Spot.Name}' ({LevelOf(score)})";

    private string LevelOf(SpotScore score) => house.Levels[score.Spot.LevelIndex].Name;
}
