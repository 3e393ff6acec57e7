using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Printing;

/// <summary>The inks of a printed page.</summary>
public enum PageInk
{
    /// <summary>Text.</summary>
    Ink,

    /// <summary>Secondary text.</summary>
    Soft,

    /// <summary>Thin lines.</summary>
    Faint,

    /// <summary>Background of text.</summary>
    Ground,

    /// <summary>The only strong colour.</summary>
    Strong,
}

/// <summary>Size and weight of letters on a printed page.</summary>
/// <param name="SizePoints">Size, points.</param>
/// <param name="IsBold">Whether they are bold.</param>
public readonly record struct PageLetters(double SizePoints, bool IsBold = false);

/// <summary>
/// Pages of a PDF, drawn in points from the upper left corner. Text stays text, pictures stay vector graphics, and only the letters
/// in use are embedded.
/// </summary>
public sealed class PrintedPages : IDisposable
{
    private readonly MemoryStream bytes = new();
    private readonly SKDocument document;
    private readonly Dictionary<PageLetters, Lettering> letterings = [];
    private SKCanvas? canvas;

    /// <summary>Starts a document without a page.</summary>
    /// <param name="size">The paper.</param>
    /// <param name="title">Its title, for the viewer's window.</param>
    /// <param name="author">Its author; empty for none.</param>
    public PrintedPages(PaperSize size, string title, string author)
    {
        ArgumentNullException.ThrowIfNull(size);
        Size = size;
        document = SKDocument.CreatePdf(bytes, new SKDocumentPdfMetadata
        {
            Title = title,
            Author = author,
            Creator = Shared.PngMark.Text,
            Producer = Shared.PngMark.Text,
            RasterDpi = 300,
            EncodingQuality = 95,
        }) ?? throw new InvalidOperationException("The PDF could not be begun.");
    }

    /// <summary>The paper.</summary>
    public PaperSize Size { get; }

    /// <summary>How many pages were started.</summary>
    public int Pages { get; private set; }

    /// <summary>Ends the current page, if there is one, and starts the next.</summary>
    public void BeginPage()
    {
        if (Pages > 0)
        {
            document.EndPage();
        }

        canvas = document.BeginPage((float)Size.WidthPoints, (float)Size.HeightPoints);
        Pages++;
    }

    /// <summary>Ends the document.</summary>
    /// <returns>The finished file.</returns>
    public byte[] Finish()
    {
        if (Pages == 0)
        {
            BeginPage();
        }

        document.EndPage();
        document.Close();
        return PdfFontSubsets.In(bytes.ToArray());
    }

    /// <summary>Breaks a text into lines.</summary>
    public IReadOnlyList<string> Wrap(string text, PageLetters letters, double widthPoints) => Of(letters).Wrap(text, widthPoints);

    /// <summary>Width of a text, points.</summary>
    public double WidthOf(string text, PageLetters letters) => Of(letters).WidthOf(text);

    /// <summary>Writes a line.</summary>
    /// <param name="text">The text.</param>
    /// <param name="x">Its left end, or its right end if aligned right.</param>
    /// <param name="baseline">The baseline of its letters.</param>
    /// <param name="letters">Its letters.</param>
    /// <param name="ink">Its colour.</param>
    /// <param name="isAtRight">Whether it ends at x.</param>
    public void Write(string text, double x, double baseline, PageLetters letters, PageInk ink = PageInk.Ink, bool isAtRight = false) =>
        Of(letters).Write(Canvas, text, x, baseline, ColourOf(ink), isAtRight ? SKTextAlign.Right : SKTextAlign.Left);

    /// <summary>Draws a line.</summary>
    public void Line(double fromX, double fromY, double toX, double toY, double widthPoints, PageInk ink)
    {
        using SKPaint pen = Pen.Line(ColourOf(ink), widthPoints);
        Canvas.DrawLine((float)fromX, (float)fromY, (float)toX, (float)toY, pen);
    }

    /// <summary>Fills a rectangle.</summary>
    public void Fill(double x, double y, double widthPoints, double heightPoints, PageInk ink)
    {
        using SKPaint fill = Pen.Fill(ColourOf(ink));
        Canvas.DrawRect((float)x, (float)y, (float)widthPoints, (float)heightPoints, fill);
    }

    /// <summary>Draws a tick or a cross.</summary>
    /// <param name="passes">Whether to draw a tick.</param>
    /// <param name="x">Its left side.</param>
    /// <param name="middle">Its middle line.</param>
    /// <param name="sizePoints">Its width and height.</param>
    public void Sign(bool passes, double x, double middle, double sizePoints) =>
        Marks.PassSign.Draw(Canvas, passes, x, middle, sizePoints, Palette.Ink);

    /// <summary>Draws a picture.</summary>
    public void Draw(VectorPicture picture, double x, double y, double widthPoints)
    {
        ArgumentNullException.ThrowIfNull(picture);
        picture.DrawAt(Canvas, x, y, picture.ScaleFor(widthPoints));
    }

    /// <summary>Draws the user's own picture.</summary>
    public void Draw(PhotoPicture picture, double x, double y, double widthPoints, double heightPoints)
    {
        ArgumentNullException.ThrowIfNull(picture);
        Canvas.DrawImage(
            picture.Image, new SKRect((float)x, (float)y, (float)(x + widthPoints), (float)(y + heightPoints)), new SKSamplingOptions(SKFilterMode.Linear));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (Lettering lettering in letterings.Values)
        {
            lettering.Dispose();
        }

        document.Dispose();
        bytes.Dispose();
    }

    private SKCanvas Canvas => canvas ?? throw new InvalidOperationException("No page was begun.");

    private Lettering Of(PageLetters letters)
    {
        if (!letterings.TryGetValue(letters, out Lettering? lettering))
        {
            letterings.Add(letters, lettering = new Lettering(letters.SizePoints, letters.IsBold));
        }

        return lettering;
    }

    private static SKColor ColourOf(PageInk ink) => ink switch
    {
        PageInk.Ink => Palette.Ink,
        PageInk.Soft => Palette.SoftInk,
        PageInk.Faint => Palette.FaintInk,
        PageInk.Ground => Palette.Ground,
        _ => Palette.Spot,
    };
}
