using System.Globalization;
using LinkMargin.Engine.Runs;
using LinkMargin.Reports.Documents;
using LinkMargin.Reports.Pictures;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Handover;

/// <summary>The video cables that the chosen spot needs, and what the others would.</summary>
/// <param name="findings">What was computed; with at least one spot's runs.</param>
/// <param name="pictures">The pictures of the report.</param>
internal sealed class RunsSection(HandoverFindings findings, HandoverPictures pictures)
{
    private readonly RunWords words = new(findings.Loaded);
    private readonly RouteWords routes = new(findings.Loaded);
    private readonly SpotRuns chosen = findings.RunsOfChosen!;

    /// <summary>The section.</summary>
    public ReportSection Section => new("runs", "Cable runs",
    [
        new ParagraphBlock(SpotCableWords.Summary(chosen, findings.Loaded.Lengths)),
        .. chosen.Runs.Count > 0 ? [Runs] : Array.Empty<ReportBlock>(),
        .. pictures.Runs is { } plan ? [plan] : Array.Empty<ReportBlock>(),
        .. Holes.Length > 0 ? [new ListBlock([.. Holes.Select(hole => new ListItem(hole))]), new ParagraphBlock($"{PlaceWords.Note(findings.Loaded.Lengths)}, by the figures beside the plan.", TextWeight.Small)] : Array.Empty<ReportBlock>(),
        .. chosen.Splitter is { } splitter ? [new ParagraphBlock(RunWords.Splitter(splitter))] : Array.Empty<ReportBlock>(),
        .. chosen.Passages.Count > 0 ? [new ListBlock([.. chosen.Passages.Select(fit => new ListItem(words.Fit(fit)))])] : Array.Empty<ReportBlock>(),
        .. findings.Runs.Count > 1 ? [new ParagraphBlock("What each spot needs in cable", TextWeight.Heading), Overview] : Array.Empty<ReportBlock>(),
        new ParagraphBlock(
            RunWords.Caution + " Ask for the pull sheet before work begins: it lists each route leg by leg.",
            TextWeight.Small),
    ]);

    private string[] Holes =>
        [.. chosen.Runs.SelectMany((run, i) => run.Route is { } route ? routes.Holes(route).Select(hole => FormattableString.Invariant($"R{i + 1}: {hole}.")) : [])];

    private TableBlock Runs => new(
        [new TableColumn("From and to", 2.4), new TableColumn("How", 3), new TableColumn("Carries the picture", 1.2)],
        [.. chosen.Runs.Select((run, i) => (IReadOnlyList<TableCell>)[
            FormattableString.Invariant($"R{i + 1}  ") + $"{run.Connection.FromName} to {run.Connection.ToName}",
            new TableCell(MapFindings.Capital(words.Means(run)), words.Length(run)),
            RunWords.Word(run.Carries)])]);

    private TableBlock Overview => new(
        [new TableColumn("Spot", 2), new TableColumn("New runs", 1, true), new TableColumn("To buy", 1, true), new TableColumn("Holes", 1, true), new TableColumn("In joists", 1, true), new TableColumn("Can be pulled", 1), new TableColumn("Carries the picture", 1.2)],
        [.. findings.Runs.Select(runs => (IReadOnlyList<TableCell>)[
            runs.Spot.Name,
            runs.NewRuns.ToString(CultureInfo.InvariantCulture),
            findings.Loaded.Lengths.Brief(runs.BuyMetres),
            runs.Holes.ToString(CultureInfo.InvariantCulture),
            runs.JoistHoles.ToString(CultureInfo.InvariantCulture),
            runs.IsComplete ? "yes" : "no",
            RunWords.Word(runs.Carries)])]) { IsSmall = true };
}
