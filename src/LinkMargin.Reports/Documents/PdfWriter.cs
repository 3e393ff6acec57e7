using System.Globalization;
using LinkMargin.Plots.Drawing;
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

/// <summary>Lays out a report on pages from top to bottom; anything that does not fit goes on the next page.</summary>
internal sealed class PdfLayout(PrintedPages pages, ReportDocument report, int? pageCount)
{
    private const double Side = 43, Top = 46, Bottom = 52; // 15 mm at the sides, 16 mm at the top; space for the footer
    private const double LineShare = 1.35;
    private const double ParagraphGap = 6, CellPad = 2.4, ColumnGap = 8, ListIndent = 16;
    private const double LogoHeight = 44, LogoWidth = 170;
    private const int LinesTogether = 4;
    private const double LeastPictureShare = 0.45, LeastShrink = 0.85;

    private static readonly PageLetters Title = new(20, true), Heading = new(14, true), SubHeading = new(11, true), Lead = new(13.5);
    private static readonly PageLetters Usual = new(10), Strong = new(10, true), Small = new(8.5), Tiny = new(7.6), TinyStrong = new(7.6, true);

    private double y;

    private double Width => pages.Size.WidthPoints - (2 * Side);

    private double End => pages.Size.HeightPoints - Bottom;

    private double Free => End - y;

    /// <summary>Lays out the whole report.</summary>
    public void Lay()
    {
        Begin();
        Header();
        foreach (ReportSection section in report.Sections)
        {
            Section(section);
        }
    }

    private void Begin()
    {
        pages.BeginPage();
        y = Top;
        string number = pageCount is { } count
            ? string.Create(CultureInfo.InvariantCulture, $"page {pages.Pages} of {count}")
            : "page";
        double foot = pages.Size.HeightPoints - 26;
        pages.Line(Side, foot - 12, Side + Width, foot - 12, 0.5, PageInk.Faint);
        pages.Write(Fitted(report.Foot, Tiny, Width - 80), Side, foot, Tiny, PageInk.Soft);
        pages.Write(number, Side + Width, foot, Tiny, PageInk.Soft, isAtRight: true);
    }

    private void Header()
    {
        if (report.Logo is { } logo)
        {
            double height = Math.Min(LogoHeight, LogoWidth / logo.Aspect);
            pages.Draw(logo, Side, y, height * logo.Aspect, height);
            y += height + 10;
        }

        Text(report.Title, Title, PageInk.Ink, 2);
        foreach (string line in report.Below)
        {
            Text(line, Usual, PageInk.Soft, 0);
        }

        y += 6;
    }

    private void Section(ReportSection section)
    {
        ReportBlock[] blocks = [.. section.Blocks.Where(block => block is not ExploreBlock)];
        if (blocks.Length == 0)
        {
            return;
        }

        // A heading is never the last thing on a page.
        double first = Math.Min(HeightOf(blocks[0]), 150), second = blocks[0] is ParagraphBlock && blocks.Length > 1 ? Math.Min(HeightOf(blocks[1]), 80) : 0;
        if ((section.BeginsPage && y > Top) || Free < 40 + first + second)
        {
            Begin();
        }

        y += y > Top ? 10 : 0;
        Text(section.Heading, Heading, PageInk.Ink, 2);
        pages.Line(Side, y, Side + Width, y, 0.9, PageInk.Ink);
        y += 8;
        foreach (ReportBlock block in blocks)
        {
            Block(block);
        }
    }

    private void Block(ReportBlock block)
    {
        switch (block)
        {
            case ParagraphBlock paragraph:
                Paragraph(paragraph);
                break;
            case ListBlock list:
                List(list);
                break;
            case TableBlock table:
                Table(table);
                break;
            case PictureBlock picture:
                Picture(picture);
                break;
            case SignatureBlock signature:
                Signature(signature);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block, "Not a known part of a report.");
        }
    }

    // Exact enough to know whether it fits; a table may be split between rows.
    private double HeightOf(ReportBlock block) => block switch
    {
        PictureBlock picture => picture.Picture.HeightPoints * ScaleOf(picture.Picture, End - Top),
        ParagraphBlock paragraph => pages.Wrap(paragraph.Text, LettersOf(paragraph.Weight), Width).Count * LettersOf(paragraph.Weight).SizePoints * LineShare,
        TableBlock => 60,
        _ => 40,
    };

    private static PageLetters LettersOf(TextWeight weight) => weight switch
    {
        TextWeight.Lead => Lead,
        TextWeight.Small => Small,
        TextWeight.Heading => SubHeading,
        _ => Usual,
    };

    private void Paragraph(ParagraphBlock paragraph)
    {
        if (paragraph.Weight == TextWeight.Heading)
        {
            Room(60);
            y += 4;
        }

        // A short paragraph is not split.
        PageLetters letters = LettersOf(paragraph.Weight);
        int lines = pages.Wrap(paragraph.Text, letters, Width).Count;
        Room(lines <= LinesTogether ? lines * letters.SizePoints * LineShare : 0);
        Text(paragraph.Text, letters, paragraph.Weight == TextWeight.Small ? PageInk.Soft : PageInk.Ink, paragraph.Weight == TextWeight.Heading ? 3 : ParagraphGap);
    }

    private void Text(string text, PageLetters letters, PageInk ink, double gap) => y = TextAt(text, Side, Width, letters, ink, mayBreak: true) + gap;

    // Writes lines from y down and returns the height of their end. Starts a new page if allowed.
    private double TextAt(string text, double x, double width, PageLetters letters, PageInk ink, bool mayBreak)
    {
        double line = letters.SizePoints * LineShare;
        foreach (string words in pages.Wrap(text, letters, width))
        {
            if (mayBreak)
            {
                Room(line);
            }

            pages.Write(words, x, y + letters.SizePoints, letters, ink);
            y += line;
        }

        return y;
    }

    private void Room(double height)
    {
        if (Free < height && y > Top)
        {
            Begin();
        }
    }

    private void List(ListBlock list)
    {
        for (int i = 0; i < list.Items.Count; i++)
        {
            ListItem item = list.Items[i];
            int lines = pages.Wrap(item.Text, Usual, Width - ListIndent).Count, small = item.Detail.Length == 0 ? 0 : pages.Wrap(item.Detail, Small, Width - ListIndent).Count;
            Room(((lines * Usual.SizePoints) + (small * Small.SizePoints)) * LineShare);
            pages.Write(list.IsNumbered ? FormattableString.Invariant($"{i + 1}.") : "\u2022", Side + 2, y + Usual.SizePoints, Usual);
            TextAt(item.Text, Side + ListIndent, Width - ListIndent, Usual, PageInk.Ink, mayBreak: false);
            TextAt(item.Detail, Side + ListIndent, Width - ListIndent, Small, PageInk.Soft, mayBreak: false);
            y += 3;
        }

        y += 4;
    }

    private void Table(TableBlock table)
    {
        PageLetters letters = table.IsSmall ? Tiny : Usual, strong = table.IsSmall ? TinyStrong : Strong, detail = table.IsSmall ? Tiny : Small;
        double shares = table.Columns.Sum(column => column.Share), room = Width - (ColumnGap * (table.Columns.Count - 1));
        double[] widths = [.. table.Columns.Select(column => room * column.Share / shares)], lefts = new double[widths.Length];
        for (int i = 0; i < widths.Length; i++)
        {
            lefts[i] = i == 0 ? Side : lefts[i - 1] + widths[i - 1] + ColumnGap;
        }

        // A row is not left alone on a page: the first two and the last two stay together.
        double[] heights = [.. table.Rows.Select(RowHeight)];
        Room(HeadHeight() + heights.Take(2).Sum());
        Head();
        for (int i = 0; i < heights.Length; i++)
        {
            if (Free < heights[i] + (i == heights.Length - 2 ? heights[i + 1] : 0))
            {
                Begin();
                Head();
            }

            Row(table.Rows[i], heights[i]);
        }

        y += 8;

        PageLetters LettersFor(TableCell cell) => cell.IsBold ? strong : cell.IsSmall ? detail : letters;

        double SignWidth(TableCell cell) => cell.Passes is null ? 0 : 1.25 * letters.SizePoints;

        double RowHeight(IReadOnlyList<TableCell> row) => row.Select((cell, i) =>
                (pages.Wrap(cell.Text, LettersFor(cell), widths[i] - SignWidth(cell)).Count * letters.SizePoints * LineShare)
                + (cell.Detail.Length == 0 ? 0 : pages.Wrap(cell.Detail, detail, widths[i]).Count * detail.SizePoints * LineShare))
            .DefaultIfEmpty().Max() + (table.IsSmall ? CellPad : 2 * CellPad);

        double HeadHeight() => (table.Columns.Select((column, i) => pages.Wrap(column.Heading, detail, widths[i]).Count).DefaultIfEmpty().Max() * detail.SizePoints * LineShare) + CellPad;

        void Head()
        {
            double bottom = y + HeadHeight();
            for (int i = 0; i < widths.Length; i++)
            {
                IReadOnlyList<string> lines = pages.Wrap(table.Columns[i].Heading, detail, widths[i]);
                for (int k = 0; k < lines.Count; k++)
                {
                    bool isRight = table.Columns[i].IsFigures;
                    pages.Write(lines[k], isRight ? lefts[i] + widths[i] : lefts[i], bottom - CellPad - ((lines.Count - 1 - k) * detail.SizePoints * LineShare), detail, PageInk.Soft, isRight);
                }
            }

            pages.Line(Side, bottom, Side + Width, bottom, 0.7, PageInk.Ink);
            y = bottom;
        }

        void Row(IReadOnlyList<TableCell> row, double height)
        {
            double top = y + (table.IsSmall ? CellPad / 2 : CellPad);
            for (int i = 0; i < widths.Length; i++)
            {
                TableCell cell = row[i];
                double sign = SignWidth(cell), at = top;
                if (cell.Passes is { } passes)
                {
                    pages.Sign(passes, lefts[i], at + (0.62 * letters.SizePoints), 0.75 * letters.SizePoints);
                }

                Lines(cell.Text, LettersFor(cell), sign, cell.IsSmall ? PageInk.Soft : PageInk.Ink);
                Lines(cell.Detail, detail, 0, PageInk.Soft);

                void Lines(string text, PageLetters with, double indent, PageInk ink)
                {
                    bool isRight = table.Columns[i].IsFigures;
                    foreach (string line in pages.Wrap(text, with, widths[i] - indent))
                    {
                        pages.Write(line, isRight ? lefts[i] + widths[i] : lefts[i] + indent, at + (cell.IsSmall ? letters : with).SizePoints, with, ink, isRight);
                        at += with.SizePoints * LineShare;
                    }
                }
            }

            y += height;
            pages.Line(Side, y, Side + Width, y, 0.4, PageInk.Faint);
        }
    }

    private double ScaleOf(VectorPicture picture, double mostHeight) => Math.Min(Math.Min(1, Width / picture.WidthPoints), mostHeight / picture.HeightPoints);

    // A picture that would leave most of a page empty is drawn slightly smaller instead.
    private void Picture(PictureBlock block)
    {
        double caption = block.Caption.Length == 0 ? 0 : (pages.Wrap(block.Caption, Small, Width).Count * Small.SizePoints * LineShare) + 4;
        double whole = ScaleOf(block.Picture, End - Top - caption), here = ScaleOf(block.Picture, Math.Max(1, Free - caption));
        if (here < whole && (here < LeastShrink * whole || here * block.Picture.WidthPoints < LeastPictureShare * Width))
        {
            Begin();
            here = whole;
        }

        double scale = Math.Min(whole, here);
        pages.Draw(block.Picture, Side, y, scale * block.Picture.WidthPoints);
        y += (scale * block.Picture.HeightPoints) + 4;
        if (caption > 0)
        {
            TextAt(block.Caption, Side, Width, Small, PageInk.Soft, mayBreak: false);
        }

        y += 8;
    }

    private void Signature(SignatureBlock block)
    {
        Room(70);
        y += 44;
        double gap = 18, width = (Width - (gap * (block.Lines.Count - 1))) / block.Lines.Count;
        for (int i = 0; i < block.Lines.Count; i++)
        {
            double x = Side + (i * (width + gap));
            pages.Line(x, y, x + width, y, 0.7, PageInk.Ink);
            pages.Write(Fitted(block.Lines[i], Small, width), x, y + 11, Small, PageInk.Soft);
        }

        y += 24;
    }

    private string Fitted(string text, PageLetters letters, double width) =>
        pages.WidthOf(text, letters) <= width ? text : pages.Wrap(text, letters, width).FirstOrDefault("") + " …";
}
