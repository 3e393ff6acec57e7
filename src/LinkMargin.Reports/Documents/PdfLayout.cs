using System.Globalization;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Printing;
using static LinkMargin.Reports.Documents.PdfLetters;

namespace LinkMargin.Reports.Documents;

/// <summary>Lays out a report on pages from top to bottom; anything that does not fit goes on the next page.</summary>
internal sealed class PdfLayout(PrintedPages pages, ReportDocument report, int? pageCount)
{
    private const double Side = 43, Top = 46, Bottom = 52; // 15 mm at the sides, 16 mm at the top; space for the footer
    private const double ParagraphGap = 6, ListIndent = 16;
    private const double LogoHeight = 44, LogoWidth = 170;
    private const int LinesTogether = 4;
    private const double LeastPictureShare = 0.45, LeastShrink = 0.85;

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

    private void Table(TableBlock block)
    {
        // A row is not left alone on a page: the first two and the last two stay together.
        var table = new PdfTable(pages, block, Side, Width);
        double[] heights = [.. block.Rows.Select(table.HeightOf)];
        Room(table.HeadHeight + heights.Take(2).Sum());
        y = table.DrawHead(y);
        for (int i = 0; i < heights.Length; i++)
        {
            if (Free < heights[i] + (i == heights.Length - 2 ? heights[i + 1] : 0))
            {
                Begin();
                y = table.DrawHead(y);
            }

            table.Draw(block.Rows[i], y);
            y += heights[i];
            pages.Line(Side, y, Side + Width, y, 0.4, PageInk.Faint);
        }

        y += 8;
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
