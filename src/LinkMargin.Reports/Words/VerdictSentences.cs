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

    /// <summary>Whether the first spot can be told from the others; null where that was not worked out.</summary>
    public CloseCall? Call { get; init; }

    /// <summary>All of them, each a paragraph.</summary>
    public IEnumerable<string> All =>
    [
        $"{Chosen} {Against}",
        .. HowClear,
        .. AtOnce,
        .. NeverPassing,
        .. Cautions.About(ranking.Scores.Select(score => ($"'{score.Spot.Name}' to '{score.Worst.Seat.Name}'", score.Worst.Cautions))),
        Cautions.Estimates,
    ];

    private string Chosen
    {
        get
        {
            SpotScore best = choice.Best;
            LinkBudget worst = best.Worst;
            string seat = $"its worst seat, '{worst.Seat.Name}', has {Tenths.ShowMargin(best.By.MarginDb(worst), worst.RequiredDb)} dB{ToCountOn}, "
                + $"{Headroom.Words(best)} the {Tenths.ShowRequired(worst.RequiredDb)} dB it asks for";
            string every = SomePlayElsewhere ? "every seat that plays there" : "every seat";
            return best.PassesAll
                ? $"Choose {Named(best)}: {seat}, so {every} is met."
                : $"No spot meets every seat{(SomePlayElsewhere ? " that plays there" : "")}{Surely}; {Named(best)} comes nearest: {seat}{Share(best)}.";
        }
    }

    private bool IsCounted => choice.Best.By != DecisionMargin.Median;

    private string ToCountOn => IsCounted ? " to count on" : "";

    private string Surely => IsCounted ? " by the margin to count on" : "";

    private string Against => choice.Next is { } next
        ? $"What decides it is the worst seat of each spot: the next spot, {Named(next)}{(choice.BestOfOtherLevels.Contains(next) ? ", also the best on its level" : "")}, {Behind(next)}."
        : "There is no other spot to compare it with.";

    private IEnumerable<string> HowClear
    {
        get
        {
            if (Call is null || ranking.Scores.Count < 2)
            {
                yield break;
            }

            SpotScore best = choice.Best, likeliest = LikeliestOther;
            string first = $"'{best.Spot.Name}' is the best spot with a probability of {Likely(best)}";
            yield return Call.Rivals.Count == 0
                ? $"The call is clear: {first}, the likeliest other, '{likeliest.Spot.Name}', with {Likely(likeliest)}."
                : $"Too close to call: {first}, {string.Join(", ", Call.Rivals.Select(rival => $"'{rival.Spot.Name}' with {Likely(rival)}"))}.{Settling}";
            if (Overtaken(likeliest) is { } ahead)
            {
                yield return $"'{likeliest.Spot.Name}' ({Likely(likeliest)}) ranks below '{ahead.Spot.Name}' ({Likely(ahead)}){Surely}; its margin is less certain, "
                    + "or less tied to that of the other spots, so it comes out best more often.";
            }
        }
    }

    // By the probabilities as they are printed: equals stay in the ranking's order.
    private SpotScore LikeliestOther => ranking.Scores.Skip(1).MaxBy(score => UncertaintyWords.Percent(Call!.ProbabilityBest(score)))!;

    // The first spot that is ranked above another though it is best less often; null where there is none.
    private SpotScore? Overtaken(SpotScore other) => ranking.Scores
        .TakeWhile(score => score != other)
        .FirstOrDefault(score => UncertaintyWords.Percent(Call!.ProbabilityBest(score)) < UncertaintyWords.Percent(Call.ProbabilityBest(other)));

    private string Settling => Call?.Settling is { } measurement
        ? $" The reading that would tell most between them is sent from '{measurement.Transmitter.Name}' and taken {measurement.Where} on level '{house.Levels[measurement.LevelIndex].Name}'"
            + string.Create(CultureInfo.InvariantCulture, $" (it leaves {100 * measurement.UncertaintyLeft:0} % of the doubt on average); 'linkmargin fit' takes readings in.")
        : "";

    private string Likely(SpotScore score) => UncertaintyWords.Likely(Call!.ProbabilityBest(score));

    private IEnumerable<string> AtOnce => ranking.InUse is { Count: > 0 } consoles
        ?
        [
            $"Consoles in use at once, each by the seats that play it: {string.Join("; ", consoles.Select(console =>
                $"'{console.Spot.Name}' meets {Count(console.SeatsPassing)} of {Count(console.Seats)}, the worst, '{console.Worst.Seat.Name}', {Headroom.Words(console)} what it asks for"))}. What one console's radio does to another's is not worked out.",
        ]
        : [];

    private IEnumerable<string> NeverPassing => ranking.SeatsNeverPassing is { Count: > 0 } seats
        ? [$"Short of what {(seats.Count == 1 ? "it asks" : "they ask")} for at every spot: {string.Join(", ", seats.Select(s => $"'{s.Name}'"))}."]
        : [];

    private bool SomePlayElsewhere => choice.Best.Budgets.Count < house.Seats.Count;

    private string Behind(SpotScore other)
    {
        long lead = Headroom.TenthsOf(choice.Best) - Headroom.TenthsOf(other);
        string worst = $"('{other.Worst.Seat.Name}' is {Headroom.Words(other)} what it asks for)";
        return lead <= 0 ? $"is as good to 0.1 dB {worst}" : $"is {Tenths.Show(lead)} dB worse {worst}";
    }

    // How much of the play is met says more than the number of seats where some are used more than others.
    private static string Share(SpotScore score) => score.Budgets.Select(b => b.Seat.UsedDays).Distinct().Count() > 1
        ? string.Create(CultureInfo.InvariantCulture, $"; {Count(score.SeatsPassing)} of {Count(score.Seats)} seats are met, {100 * score.PassingShare:0} % of the play")
        : "";

    private string Named(SpotScore score) => $"'{score.Spot.Name}' on level '{LevelOf(score)}'";

    private string LevelOf(SpotScore score) => house.Levels[score.Spot.LevelIndex].Name;

    private static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);
}
