using LinkMargin.Plots.Printing;

namespace LinkMargin.Reports.Documents;

/// <summary>
/// A report as PDF. Pages are laid out twice: the second time the number of pages is known, for their footers. Both layouts put every
/// text and picture in the same place.
/// </summary>
internal static class PdfWriter
{
    /// <summary>Writes a report.</summary>
    /// <param name="report">The report.</param>
    /// <param name="size">The paper.</param>
    public static byte[] Write(ReportDocument report, PaperSize size)
    {
        int pages;
        using (var first = new PrintedPages(size, report.Title, report.Author))
        {
            new PdfLayout(first, report, null).Lay();
            pages = first.Pages;
        }

        using var second = new PrintedPages(size, report.Title, report.Author);
        new PdfLayout(second, report, pages).Lay();
        return second.Finish();
    }
}
