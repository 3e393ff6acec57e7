using System.Globalization;
using LinkMargin.Plots.Printing;
using LinkMargin.Reports.Documents;
using UglyToad.PdfPig;

namespace LinkMargin.Cli.Tests.Commands;

/// <summary>How the parts of a report are spread over printed pages; read back by an independent reader of PDFs.</summary>
public sealed class ReportPagesTests
{
    /// <summary>Wherever a table is split, at least two of its rows are on either page.</summary>
    [Fact]
    public void No_row_of_a_table_is_left_alone_on_a_page()
    {
        bool isEverSplit = false;
        for (int lines = 0; lines < 40; lines += 3)
        {
            using var report = new ReportDocument("Title",
            [
                new ReportSection("one", "Heading",
                [
                    new ListBlock([.. Enumerable.Range(0, lines).Select(_ => new ListItem("text"))]),
                    new TableBlock([new TableColumn("what", 1)], [.. Enumerable.Range(0, 6).Select(i => (IReadOnlyList<TableCell>)[new TableCell(string.Create(CultureInfo.InvariantCulture, $"row{i}"))])]),
                ]),
            ]);
            using PdfDocument pdf = PdfDocument.Open(PdfWriter.Write(report, PaperSize.A4));
            int[] rows = [.. pdf.GetPages().Select(page => page.GetWords().Count(word => word.Text.StartsWith("row", StringComparison.Ordinal))).Where(count => count > 0)];
            Assert.Equal(6, rows.Sum());
            Assert.All(rows, count => Assert.InRange(count, 2, 6));
            isEverSplit |= rows.Length > 1;
        }

        Assert.True(isEverSplit);
    }
}
