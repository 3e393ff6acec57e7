using System.Globalization;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Reports.Documents;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Texts;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Handover;

/// <summary>Everything behind the report, for somebody who checks it.</summary>
/// <param name="findings">What was computed.</param>
/// <param name="pictures">The pictures.</param>
internal sealed class AppendixSections(HandoverFindings findings, HandoverPictures pictures)
{
    // Columns of figures that fit side by side on a sheet.
    private const int MostAcross = 8;

    /// <summary>The sections.</summary>
    public IReadOnlyList<ReportSection> All =>
    [
        new ReportSection("budgets", "Appendix: link budgets", [.. Margins(), .. Budgets(), .. Cautioned()]) { BeginsPage = true },
        new ReportSection("maps", "Appendix: maps", [.. pictures.Sheets]) { BeginsPage = true },
        new ReportSection("paths", "Appendix: paths to the weakest seat", [pictures.Paths]) { BeginsPage = true },
    ];

    private IEnumerable<ReportBlock> Margins()
    {
        yield return new ParagraphBlock("Margins of all seats and spots, dB", TextWeight.Heading);
        foreach (SpotScore[] some in Evenly(findings.Ranking.Scores))
        {
            yield return new TableBlock(
                [new TableColumn("Seat", 2), new TableColumn("Required", 1, true), .. some.Select(score => new TableColumn(score.Spot.Name, 1.4, true))],
                [.. findings.House.Seats.Select(seat => RowOf(seat, some))]) { IsSmall = true };
        }

        yield return new ParagraphBlock("Margin to count on; behind it the median margin and the probability that the seat passes.", TextWeight.Small);
    }

    // As few blocks as can be, each of about as many.
    private static IEnumerable<T[]> Evenly<T>(IReadOnlyList<T> all)
    {
        int blocks = (all.Count + MostAcross - 1) / MostAcross;
        return all.Chunk((all.Count + blocks - 1) / blocks);
    }

    private IReadOnlyList<TableCell> RowOf(Seat seat, SpotScore[] some) =>
    [
        new TableCell(seat.Name),
        Tenths.ShowRequired(seat.RequiredDb),
        .. some.Select(score => score.With(seat) is { } link
            ? new TableCell(
                (score.By.Passes(link) ? "" : "! ") + Tenths.ShowMargin(score.By.MarginDb(link), link.RequiredDb),
                $"{Tenths.ShowMargin(findings.Uncertainty.With(link).MedianDb)}, {UncertaintyWords.Likely(findings.Uncertainty.ProbabilityPasses(link))}")
            : new TableCell("-")),
    ];

    private IEnumerable<ReportBlock> Budgets()
    {
        yield return new ParagraphBlock($"Budgets of '{findings.Chosen.Spot.Name}', the worse direction of each", TextWeight.Heading);
        foreach (LinkBudget[] some in Evenly(findings.Chosen.Budgets))
        {
            (LinkBudget Link, PrintedDirection Worse)[] columns = [.. some.Select(link => (link, new PrintedBudget(link).Worse))];
            yield return new TableBlock(
                [new TableColumn("", 2.2), .. some.Select(link => new TableColumn(link.Seat.Name, 1.2, true))],
                [
                    Row("direction", column => $"from {column.Link.WorseDirection.From}"),
                    Row("distance", column => findings.Loaded.Lengths.Brief(column.Link.DistanceMetres)),
                    Row("transmit power, dBm", column => Tenths.Show(column.Worse.Transmit)),
                    Row("antenna gains, both ends, dB", column => Tenths.Show(column.Worse.AntennaGains)),
                    Row("grip and body, dB", column => Tenths.Show(column.Worse.HandAndBody)),
                    Row("polarisation mismatch, dB", column => Tenths.Show(column.Worse.Polarisation)),
                    Row("path loss, dB", column => Tenths.Show(column.Worse.PathLoss)),
                    Row("received, dBm", column => Tenths.Show(column.Worse.Received)),
                    Row("receiver sensitivity, dBm", column => Tenths.Show(column.Worse.Needed)),
                    Row("median margin, dB", column => Tenths.Show(column.Worse.Margin)),
                    Row("allowance for uncertainty, dB", column => Tenths.Show(Tenths.OfMargin(findings.Uncertainty.MarginAtConfidenceDb(column.Link)) - column.Worse.Margin)),
                    Row("margin to count on, dB", column => Tenths.ShowMargin(findings.Uncertainty.MarginAtConfidenceDb(column.Link), column.Link.RequiredDb), isBold: true),
                    Row("required, dB", column => Tenths.ShowRequired(column.Link.RequiredDb)),
                    Row("strongest path", column => PathWords.Of(column.Link.Paths[0], findings.House, column.Link.Seat)),
                    Row("its share of the power", column => string.Create(CultureInfo.InvariantCulture, $"{100 * column.Link.ShareOf(column.Link.Paths[0]):0} %")),
                ]) { IsSmall = true };

            IReadOnlyList<TableCell> Row(string what, Func<(LinkBudget Link, PrintedDirection Worse), string> figure, bool isBold = false) =>
                [new TableCell(what) { IsBold = isBold }, .. columns.Select(column => new TableCell(figure(column)) { IsBold = isBold })];
        }
    }

    private IEnumerable<ReportBlock> Cautioned() => Cautions.About(findings.Chosen.Budgets.Select(link => ($"'{link.Seat.Name}'", link.Cautions)))
        .Select(caution => new ParagraphBlock(caution, TextWeight.Small));
}
