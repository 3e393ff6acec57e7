using System.Globalization;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Links;
using LinkMargin.Reports.Documents;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Handover;

/// <summary>The recommendation with its plan, and what to expect at each seat.</summary>
/// <param name="findings">What was computed.</param>
/// <param name="pictures">The pictures.</param>
/// <param name="remedies">What would help.</param>
/// <param name="certainty">How certain it is.</param>
internal sealed class VerdictSection(HandoverFindings findings, HandoverPictures pictures, RemedySection remedies, CertaintySection certainty)
{
    private readonly SpotScore chosen = findings.Chosen;

    /// <summary>Two sentences, what to do about it, and a plan.</summary>
    public ReportSection Recommendation => new("recommendation", "Recommendation",
    [
        new ParagraphBlock($"{First} {Second}", TextWeight.Lead),
        .. Next.Length > 0 ? [new ListBlock([.. Next.Select(one => new ListItem(one))])] : Array.Empty<ReportBlock>(),
        pictures.Verdict,
    ]);

    private string[] Next =>
    [
        .. remedies.First is { } help ? [$"What helps most: {help}."] : Array.Empty<string>(),
        .. certainty.First is { } check ? [$"Check first: {check}."] : Array.Empty<string>(),
        .. findings.RunsOfChosen is { Runs.Count: > 0 } runs ? [$"Video cables: {SpotCableWords.Cost(runs, findings.Loaded.Lengths)}."] : Array.Empty<string>(),
    ];

    /// <summary>What to expect at each seat.</summary>
    public ReportSection Seats => new("seats", "What to expect at each seat",
    [
        new TableBlock(
            [new TableColumn("", 0.3, true), new TableColumn("Seat", 2), new TableColumn("Level", 1.1), new TableColumn("What to expect", 2.3), new TableColumn("How sure", 0.9), new TableColumn("Margin to count on", 2.4)],
            [.. findings.NumberedSeats.Select(one => RowOf(one.Number, one.Link))]),
        new ParagraphBlock(
            $"How sure: the probability that the seat has all the signal it requires. Tick: {UncertaintyWords.Likely(findings.Uncertainty.Confidence)} or more, so the seat passes; cross: less. "
                + $"A margin is how much stronger the signal is than the receiver needs; the margin to count on is {UncertaintyWords.Reached(findings.Uncertainty.Confidence)}.",
            TextWeight.Small),
    ]);

    private string First
    {
        get
        {
            string place = findings.Named(chosen.Spot);
            string seats = SeatWords.Passing(chosen);
            if (findings.IsBest)
            {
                return chosen.PassesAll
                    ? $"Put the console at {place}: {seats} there."
                    : $"Put the console at {place}: {seats} there; at every other spot the weakest seat is worse off.";
            }

            SpotScore best = findings.Ranking.Scores[0];
            return $"At {place}, {seats}; {findings.Named(best.Spot)} serves its weakest seat better ({SeatWords.Passing(best)}).";
        }
    }

    private string Second
    {
        get
        {
            LinkBudget[] failing = [.. chosen.Budgets.Where(link => !chosen.By.Passes(link)).OrderBy(findings.Uncertainty.ProbabilityPasses)];
            if (failing.Length == 0)
            {
                return $"The weakest seat is '{chosen.Weakest.Seat.Name}': it {findings.BandOf(chosen.Weakest).Means}.";
            }

            string list = string.Join("; ", failing.GroupBy(link => findings.BandOf(link).Means)
                .Select(band => $"{string.Join(" and ", band.Select(link => $"'{link.Seat.Name}'"))} ({band.Key})"));
            return $"Expect dropouts at {list}{(Helps is { } help ? $"; {help}" : "")}.";
        }
    }

    // The least that makes every seat pass, if one thing does.
    private string? Helps => findings.Remedies.Alone.FirstOrDefault(remedy => remedy.After.PassesAll) is { } one
        ? $"every seat passes with {new RemedyWords(findings.Loaded).What(one.Remedies[0])}"
        : null;

    private IReadOnlyList<TableCell> RowOf(int number, LinkBudget link)
    {
        bool passes = chosen.By.Passes(link);
        return
        [
            number.ToString(CultureInfo.InvariantCulture),
            link.Seat.Name,
            findings.LevelOf(link.Seat.LevelIndex),
            new TableCell(findings.BandOf(link).Means) { IsBold = true },
            new TableCell(UncertaintyWords.Likely(findings.Uncertainty.ProbabilityPasses(link))) { Passes = passes },
            new TableCell($"{Tenths.ShowMargin(findings.Uncertainty.MarginAtConfidenceDb(link), link.RequiredDb)} dB, requires {Tenths.ShowRequired(link.RequiredDb)} dB") { IsSmall = true },
        ];
    }
}
