using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Cli.Output;

/// <summary>Which spot to choose and what decides it, in sentences; the figures are differences of the printed ones.</summary>
/// <param name="house">The house.</param>
/// <param name="ranking">Its ranking, of at least one spot.</param>
internal sealed class VerdictSentences(House house, Ranking ranking)
{
    private readonly Choice choice = Choice.Of(ranking);

    /// <summary>All of them, each a paragraph.</summary>
    public IEnumerable<string> All =>
    [
        $"{Chosen} {Against}",
        .. NeverMet,
        Cautions.Estimates,
    ];

    private string Chosen
    {
        get
        {
            LinkBudget worst = choice.Best.Worst;
            string seat = $"its worst seat, '{worst.Seat.Name}', has {Tenths.Show(worst.MarginDb)} dB, "
                + $"{Headroom.Words(worst)} the {Tenths.Show(worst.RequiredDb)} dB it asks for";
            return worst.Meets
                ? $"Choose {Named(choice.Best)}: {seat}, so every seat is met."
                : $"No spot meets every seat; {Named(choice.Best)} comes nearest: {seat}.";
        }
    }

    private string Against
    {
        get
        {
            if (choice.Next is not { } next)
            {
                return "There is no other spot to compare it with.";
            }

            string[] others =
            [
                .. choice.BestOfOtherLevels.Select(other => other == next
                    ? $"the next spot, {Named(next)}, also the best on its level, {Behind(next)}"
                    : $"the best on level '{LevelOf(other)}', '{other.Spot.Name}', {Behind(other)}"),
            ];
            return "What decides it is the worst seat of each spot: "
                + string.Join("; ", choice.BestOfOtherLevels.Contains(next) ? others : others.Prepend($"the next spot, {Named(next)}, {Behind(next)}"))
                + ".";
        }
    }

    private IEnumerable<string> NeverMet => ranking.SeatsNeverMet is { Count: > 0 } seats
        ? [$"Short of what {(seats.Count == 1 ? "it asks" : "they ask")} for at every spot: {string.Join(", ", seats.Select(s => $"'{s.Name}'"))}."]
        : [];

    private string Behind(SpotScore other)
    {
        long lead = Headroom.TenthsOf(choice.Best.Worst) - Headroom.TenthsOf(other.Worst);
        string worst = $"('{other.Worst.Seat.Name}' is {Headroom.Words(other.Worst)} what it asks for)";
        return lead <= 0 ? $"is as good to 0.1 dB {worst}" : $"is {Tenths.Show(lead)} dB worse {worst}";
    }

    private string Named(SpotScore score) => $"'{score.Spot.Name}' on level '{LevelOf(score)}'";

    private string LevelOf(SpotScore score) => house.Levels[score.Spot.LevelIndex].Name;
}
