using LinkMargin.Plots.Printing;
using static LinkMargin.Reports.Documents.PdfLetters;

namespace LinkMargin.Reports.Documents;

/// <summary>A table of a report as PDF: its columns, and its head and rows at any height of a page.</summary>
internal sealed class PdfTable
{
    private const double CellPad = 2.4, ColumnGap = 8;

    private readonly PrintedPages pages;
    private readonly TableBlock table;
    private readonly PageLetters letters;
    private readonly PageLetters strong;
    private readonly PageLetters detail;
    private readonly double[] lefts;
    private readonly double[] widths;

    /// <summary>Measures the columns.</summary>
    /// <param name="pages">Where it is drawn.</param>
    /// <param name="table">The table.</param>
    /// <param name="left">Its left edge, points.</param>
    /// <param name="width">Its width, points.</param>
    internal PdfTable(PrintedPages pages, TableBlock table, double left, double width)
    {
        (this.pages, this.table) = (pages, table);
        (letters, strong, detail) = table.IsSmall ? (Tiny, TinyStrong, Tiny) : (Usual, Strong, Small);
        double shares = table.Columns.Sum(column => column.Share), room = width - (ColumnGap * (table.Columns.Count - 1));
        widths = [.. table.Columns.Select(column => room * column.Share / shares)];
        lefts = new double[widths.Length];
        for (int i = 0; i < widths.Length; i++)
        {
            lefts[i] = i == 0 ? left : lefts[i - 1] + widths[i - 1] + ColumnGap;
        }
    }

    /// <summary>Height of its head, points.</summary>
    internal double HeadHeight =>
        (table.Columns.Select((column, i) => pages.Wrap(column.Heading, detail, widths[i]).Count).DefaultIfEmpty().Max() * LineOf(detail)) + CellPad;

    /// <summary>Height of a row, points.</summary>
    internal double HeightOf(IReadOnlyList<TableCell> row) => row.Select((cell, i) =>
            (pages.Wrap(cell.Text, LettersOf(cell), widths[i] - SignWidth(cell)).Count * LineOf(letters))
            + (cell.Detail.Length == 0 ? 0 : pages.Wrap(cell.Detail, detail, widths[i]).Count * LineOf(detail)))
        .DefaultIfEmpty().Max() + (table.IsSmall ? CellPad : 2 * CellPad);

    /// <summary>Draws its head and returns where that ends.</summary>
    internal double DrawHead(double top)
    {
        double bottom = top + HeadHeight;
        for (int i = 0; i < widths.Length; i++)
        {
            IReadOnlyList<string> lines = pages.Wrap(table.Columns[i].Heading, detail, widths[i]);
            for (int k = 0; k < lines.Count; k++)
            {
                Write(lines[k], i, 0, bottom - CellPad - ((lines.Count - 1 - k) * LineOf(detail)), detail, PageInk.Soft);
            }
        }

        pages.Line(lefts[0], bottom, lefts[^1] + widths[^1], bottom, 0.7, PageInk.Ink);
        return bottom;
    }

    /// <summary>Draws a row.</summary>
    internal void Draw(IReadOnlyList<TableCell> row, double top)
    {
        for (int i = 0; i < widths.Length; i++)
        {
            TableCell cell = row[i];
            double at = top + (table.IsSmall ? CellPad / 2 : CellPad);
            if (cell.Passes is { } passes)
            {
                pages.Sign(passes, lefts[i], at + (0.62 * letters.SizePoints), 0.75 * letters.SizePoints);
            }

            at = DrawLines(cell, cell.Text, i, at, LettersOf(cell), SignWidth(cell), cell.IsSmall ? PageInk.Soft : PageInk.Ink);
            DrawLines(cell, cell.Detail, i, at, detail, 0, PageInk.Soft);
        }
    }

    private double DrawLines(TableCell cell, string text, int column, double at, PageLetters with, double indent, PageInk ink)
    {
        foreach (string line in pages.Wrap(text, with, widths[column] - indent))
        {
            Write(line, column, indent, at + (cell.IsSmall ? letters : with).SizePoints, with, ink);
            at += LineOf(with);
        }

        return at;
    }

    private void Write(string line, int column, double indent, double at, PageLetters with, PageInk ink)
    {
        bool isRight = table.Columns[column].IsFigures;
        pages.Write(line, isRight ? lefts[column] + widths[column] : lefts[column] + indent, at, with, ink, isRight);
    }

    private PageLetters LettersOf(TableCell cell) => cell.IsBold ? strong : cell.IsSmall ? detail : letters;

    private double SignWidth(TableCell cell) => cell.Passes is null ? 0 : 1.25 * letters.SizePoints;

    private static double LineOf(PageLetters letters) => letters.SizePoints * LineShare;
}
