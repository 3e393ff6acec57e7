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
            : $"The changes that help most, each recomputed with the full model.{(Shown.Any(one => one.After.PassesAll) ? "" : " None of them makes every seat pass.")}"),
        new TableBlock(
            [new TableColumn("Change", 4.6), new TableColumn("Effort", 1.2), new TableColumn("Seats that pass then", 1.5), new TableColumn($"'{result.Before.Weakest.Seat.Name}' then", 1.9)],
            [.. Shown.Select(RowOf)]),
        new ParagraphBlock($"{PlaceWords.Note(findings.Loaded.Lengths)}, by the figures beside the maps in the appendix.", TextWeight.Small),
        .. Minds.Length > 0 ? [new ListBlock([.. Minds.Select(mind => new ListItem(mind))])] : Array.Empty<ReportBlock>(),
    ]);

    /// <summary>The first of them in a phrase; null where nothing helps.</summary>
    public string? First => Shown.Length == 0 ? null : $"{What(Shown[0])}{(Shown[0].Effort == Effort.Small ? "" : $" (effort: {RemedyWords.EffortOf(Shown[0].Effort)})")}{EffectOf(Shown[0])}";

    private string EffectOf(RemedyResult one)
    {
        string seat = $"'{result.Before.Weakest.Seat.Name}'";
        return one.After.PassesAll ? "; then every seat passes"
            : one.ProbabilityAtSeat is { } likely ? $"; then {seat} is {UncertaintyWords.Likely(likely)} sure, now {UncertaintyWords.Likely(findings.Uncertainty.ProbabilityPasses(result.Before.Weakest))}"
            : $"; {seat} then needs no radio";
    }

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

    private string What(RemedyResult one) => string.Join(", and ", one.Remedies.Select(words.What));

    private IReadOnlyList<TableCell> RowOf(RemedyResult one)
    {
        return
        [
            MapFindings.Capital(What(one)),
            RemedyWords.EffortOf(one.Effort),
            SeatWords.Passing(one.After),
            one.ProbabilityAtSeat is { } likely
                ? new TableCell(findings.Loaded.Tables.BandOf(likely).Means, $"{UncertaintyWords.Likely(likely)} sure")
                : new TableCell("on a cable"),
        ];
    }
}
