using LinkMargin.Engine.Decisions.Remedies;
using LinkMargin.Reports.Documents;
using LinkMargin.Reports.Pictures;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Handover;

/// <summary>What would help the chosen spot, and what it takes.</summary>
/// <param name="findings">What was computed.</param>
internal sealed class RemedySection(HandoverFindings findings)
{
    private const int Most = 6;

    private readonly RemedyWords words = new(findings.Loaded);
    private readonly ImproveResult result = findings.Remedies;

    /// <summary>The section.</summary>
    public ReportSection Section => new("remedies", "What would help, and what it takes", Shown.Length == 0 ? [new ParagraphBlock(None)] :
    [
        new ParagraphBlock(result.Before.PassesAll
            ? "Every seat passes as things are. These would add room to spare:"
            : "The changes that help most, each recomputed with the full model:"),
        new TableBlock(
            [new TableColumn("Change", 4.6), new TableColumn("Takes", 1.2), new TableColumn("Seats that pass then", 1.5), new TableColumn($"'{result.Before.Weakest.Seat.Name}' then", 1.9)],
            [.. Shown.Select(RowOf)]),
        .. Minds.Length > 0 ? [new ListBlock([.. Minds.Select(mind => new ListItem(mind))])] : Array.Empty<ReportBlock>(),
    ]);

    private static string None => FormattableString.Invariant(
        $"None of the changes tried gains {ImproveRequest.LeastGainDb:0.0} dB or more at the weakest seat. Another place may do better: see the alternatives.");

    private RemedyResult[] Shown =>
    [
        .. result.Alone.Where(remedy => remedy.After.PassesAll)
            .Concat(result.Pairs.Where(pair => pair.After.PassesAll))
            .Concat(result.Alone)
            .Distinct()
            .Take(Most),
    ];

    private string[] Minds => [.. Shown.SelectMany(one => one.Remedies).Select(words.Mind).Where(mind => mind.Length > 0).Distinct()];

    private IReadOnlyList<TableCell> RowOf(RemedyResult one)
    {
        string what = string.Join(", and ", one.Remedies.Select(words.What));
        return
        [
            MapFindings.Capital(what),
            one.Effort switch { Effort.Free => "nothing", Effort.Small => "moving it", Effort.Buy => "buying it", _ => "a cable" },
            MapFindings.Passing(one.After),
            one.ProbabilityAtSeat is { } likely
                ? new TableCell(findings.Loaded.Tables.BandOf(likely).Means, $"{UncertaintyWords.Likely(likely)} likely to pass")
                : new TableCell("on a cable"),
        ];
    }
}
