using System.Globalization;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Links;
using LinkMargin.Reports.Documents;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Pictures;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Handover;

/// <summary>The recommendation with its plan, and what to expect at each seat.</summary>
/// <param name="findings">What was computed.</param>
/// <param name="pictures">The pictures.</param>
internal sealed class VerdictSection(HandoverFindings findings, HandoverPictures pictures)
{
    private readonly SpotScore chosen = findings.Chosen;

    /// <summary>Two sentences and a plan.</summary>
    public ReportSection Recommendation => new("recommendation", "Recommendation",
    [
        new ParagraphBlock($"{First} {Second}", TextWeight.Lead),
        pictures.Verdict,
    ]);

    /// <summary>What to expect at each seat.</summary>
    public ReportSection Seats => new("seats", "What to expect at each seat",
    [
        new TableBlock(
            [new TableColumn("", 0.4, true), new TableColumn("Seat", 2.6), new TableColumn("What to expect", 2.6), new TableColumn("Figures", 3)],
            [.. findings.NumberedSeats.Select(one => RowOf(one.Number, one.Link))]),
        new ParagraphBlock(
            $"Passes: {UncertaintyWords.Often(findings.Uncertainty.Confidence)} the link has at least the margin that the seat requires. "
                + "Figures: the probability that it does, then the margin to count on against the required margin. A margin is how much stronger the signal is than the receiver needs.",
            TextWeight.Small),
    ]);

    private string First
    {
        get
        {
            string place = findings.Named(chosen.Spot);
            string seats = MapFindings.Passing(chosen);
            if (findings.IsBest)
            {
                return chosen.PassesAll
                    ? $"Put the console at {place}: {seats} there."
                    : $"Put the console at {place}: {seats} there, and no other spot serves its weakest seat better.";
            }

            SpotScore best = findings.Ranking.Scores[0];
            return $"At {place}, {seats}; {findings.Named(best.Spot)} serves its weakest seat better ({MapFindings.Passing(best)}).";
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

            string list = string.Join(" and ", failing.GroupBy(link => findings.BandOf(link).Means)
                .Select(band => $"{string.Join(", ", band.Select(link => $"'{link.Seat.Name}'"))} ({band.Key})"));
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
            new TableCell(link.Seat.Name, $"level {findings.LevelOf(link.Seat.LevelIndex)}"),
            new TableCell(findings.BandOf(link).Means) { IsBold = true, Passes = passes },
            new TableCell(
                $"{UncertaintyWords.Likely(findings.Uncertainty.ProbabilityPasses(link))} likely to pass",
                $"{Tenths.ShowMargin(findings.Uncertainty.MarginAtConfidenceDb(link), link.RequiredDb)} dB to count on, requires {Tenths.ShowRequired(link.RequiredDb)} dB"),
        ];
    }
}
