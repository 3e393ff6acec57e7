using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>A sheet with a title above and a caption below; what lies between is the body.</summary>
internal sealed class Page : IDisposable
{
    /// <summary>White round the edge of the sheet, points.</summary>
    public const double MarginPoints = 16;

    private const double TitlePoints = 15;
    private const double CaptionPoints = 9.5;

    // The one order of colours that the drawing library fills quickly everywhere.
    public const SKColorType ColourOrder = SKColorType.Bgra8888;

    private readonly SKSurface surface;
    private readonly PictureSize size;

    public Page(PictureSize size, string title, string caption)
    {
        this.size = size;
        surface = SKSurface.Create(new SKImageInfo(size.WidthPixels, size.HeightPixels, ColourOrder, SKAlphaType.Premul))
            ?? throw new InvalidOperationException(
                $"A picture of {size.WidthPixels} × {size.HeightPixels} pixels does not fit in memory.");
        surface.Canvas.Clear(Palette.Paper);
        double margin = MarginPoints * size.PixelsPerPoint, width = size.WidthPixels - (2 * margin);
        double top = WriteTitle(title, margin, width);
        double bottom = WriteCaption(caption, margin, width);
        Body = new(margin, top, size.WidthPixels - margin, Math.Max(top, bottom));
    }

    public SKCanvas Canvas => surface.Canvas;

    /// <summary>What title, caption and margins leave, pixels.</summary>
    public LabelBox Body { get; }

    /// <summary>Height that margins, title and caption take, if the picture is so wide, pixels.</summary>
    public static double FurniturePixels(int widthPixels, double pixelsPerPoint, string title, string caption)
    {
        double width = widthPixels - (2 * MarginPoints * pixelsPerPoint);
        using Lettering large = new(TitlePoints * pixelsPerPoint, isBold: true);
        using Lettering small = new(CaptionPoints * pixelsPerPoint, isBold: false);
        return (2 * MarginPoints * pixelsPerPoint)
            + (large.Wrap(title, width).Count * large.LineHeight) + (GapAfterTitle * pixelsPerPoint)
            + (small.Wrap(caption, width).Count * small.LineHeight) + (GapBeforeCaption * pixelsPerPoint);
    }

    /// <summary>The finished PNG with our mark in it.</summary>
    public byte[] ToPng()
    {
        using SKImage image = surface.Snapshot();
        using SKPixmap pixels = image.PeekPixels() ?? throw new InvalidOperationException("The picture has no pixels.");
        using SKData data = pixels.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.Sub, 6))
            ?? throw new InvalidOperationException("The picture could not be written as a PNG.");
        return PngChunks.Mark(data.AsSpan(), size.PixelsPerPoint);
    }

    public void Dispose() => surface.Dispose();

    private const double GapAfterTitle = 6;
    private const double GapBeforeCaption = 7;

    private double WriteTitle(string title, double margin, double width)
    {
        using var lettering = new Lettering(TitlePoints * size.PixelsPerPoint, isBold: true);
        double y = margin;
        foreach (string line in lettering.Wrap(title, width))
        {
            lettering.Write(Canvas, line, margin, y + lettering.CapHeight, Palette.Ink);
            y += lettering.LineHeight;
        }

        return y + (GapAfterTitle * size.PixelsPerPoint);
    }

    private double WriteCaption(string caption, double margin, double width)
    {
        using var lettering = new Lettering(CaptionPoints * size.PixelsPerPoint, isBold: false);
        IReadOnlyList<string> lines = lettering.Wrap(caption, width);
        double top = size.HeightPixels - margin - (lines.Count * lettering.LineHeight);
        for (int i = 0; i < lines.Count; i++)
        {
            lettering.Write(Canvas, lines[i], margin, top + ((i + 1) * lettering.LineHeight) - lettering.Descent, Palette.Ink);
        }

        return top - (GapBeforeCaption * size.PixelsPerPoint);
    }
}
