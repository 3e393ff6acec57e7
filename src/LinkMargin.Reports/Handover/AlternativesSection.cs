using System.Globalization;
using LinkMargin.Engine.Decisions;
using LinkMargin.Reports.Documents;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Handover;

/// <summary>The other spots, and why not.</summary>
/// <param name="findings">What was computed.</param>
/// <param name="pictures">The pictures.</param>
internal sealed class AlternativesSection(HandoverFindings findings, HandoverPictures pictures)
{
    private const int MostNamed = 4;

    /// <summary>The section.</summary>
    public ReportSection Section => new("alternatives", "The alternatives, and why not", findings.Ranking.Scores.Count < 2
        ? [new ParagraphBlock("No other spot was compared. If this one does not suit, ask for a search for other places.")]
        :
        [
            new TableBlock(
                [new TableColumn("Spot", 2.2), new TableColumn("Seats", 1.5), new TableColumn("Best spot, probably", 1.2), new TableColumn("Why not", 4)],
                [.. findings.Ranking.Scores.Where(score => score != findings.Chosen).Select(RowOf)]),
            pictures.Spots,
        ]);

    private IReadOnlyList<TableCell> RowOf(SpotScore score) =>
    [
        new TableCell(score.Spot.Name, $"level {findings.LevelOf(score.Spot.LevelIndex)}"),
        SeatWords.Passing(score),
        UncertaintyWords.Likely(findings.Call.ProbabilityBest(score)),
        new TableCell(WhyNot(score), $"weakest seat: {Headroom.Words(score)} the required margin"),
    ];

    private string WhyNot(SpotScore score)
    {
        string[] failing =
        [
            .. score.Budgets.Where(link => !score.By.Passes(link)).OrderBy(findings.Uncertainty.ProbabilityPasses)
                .Select(link => $"'{link.Seat.Name}' {findings.BandOf(link).Means}"),
        ];
        if (failing.Length == 0)
        {
            return $"it would do too; its weakest seat, '{score.Weakest.Seat.Name}', has less to spare than the chosen spot's";
        }

        string more = failing.Length > MostNamed ? string.Create(CultureInfo.InvariantCulture, $", and {failing.Length - MostNamed} more do not pass") : "";
        return string.Join(", ", failing.Take(MostNamed)) + more;
    }
}
