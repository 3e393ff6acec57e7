using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>A sheet with a title above and a caption below; the body is in between.</summary>
internal sealed class Page : IDisposable
{
    /// <summary>White margin of the sheet, points.</summary>
    public const double MarginPoints = 16;

    private const double TitlePoints = 15;
    private const double CaptionPoints = 9.5;

    private readonly PixelMemory? pixels;
    private readonly SKSurface? surface;
    private readonly SKPictureRecorder? recorder;
    private readonly PictureSize size;

    /// <summary>Starts a sheet.</summary>
    /// <param name="size">Its size.</param>
    /// <param name="title">Text above the body; empty for none.</param>
    /// <param name="caption">Text below the body; empty for none.</param>
    /// <param name="isVector">Whether to record vector graphics, for <see cref="ToVector"/>; otherwise pixels, for <see cref="ToPng"/>.</param>
    public Page(PictureSize size, string title, string caption, bool isVector = false)
    {
        this.size = size;
        if (isVector)
        {
            recorder = new SKPictureRecorder();
            Canvas = recorder.BeginRecording(new SKRect(0, 0, size.WidthPixels, size.HeightPixels));
        }
        else
        {
            pixels = new PixelMemory(size.WidthPixels, size.HeightPixels);
            surface = pixels.Surface() ?? throw new InvalidOperationException(
                $"A picture of {size.WidthPixels} × {size.HeightPixels} pixels does not fit in memory.");
            Canvas = surface.Canvas;
            Canvas.Clear(Palette.Paper);
        }

        double margin = MarginPoints * size.PixelsPerPoint, width = size.WidthPixels - (2 * margin);
        double top = WriteTitle(title, margin, width);
        double bottom = WriteCaption(caption, margin, width);
        Body = new(margin, top, size.WidthPixels - margin, Math.Max(top, bottom));
    }

    public SKCanvas Canvas { get; }

    /// <summary>Whether it keeps vector graphics.</summary>
    public bool IsVector => recorder is not null;

    /// <summary>The area between margins, title and caption, pixels.</summary>
    public LabelBox Body { get; }

    /// <summary>Height of margins, title and caption for a picture of this width, pixels.</summary>
    public static double FurniturePixels(int widthPixels, double pixelsPerPoint, string title, string caption)
    {
        double width = widthPixels - (2 * MarginPoints * pixelsPerPoint);
        using Lettering large = new(TitlePoints * pixelsPerPoint, isBold: true);
        using Lettering small = new(CaptionPoints * pixelsPerPoint, isBold: false);
        return (2 * MarginPoints * pixelsPerPoint)
            + Block(large.Wrap(title, width).Count, large.LineHeight, GapAfterTitle)
            + Block(small.Wrap(caption, width).Count, small.LineHeight, GapBeforeCaption);

        double Block(int lines, double lineHeight, double gapPoints) => lines == 0 ? 0 : (lines * lineHeight) + (gapPoints * pixelsPerPoint);
    }

    /// <summary>The finished PNG with our mark in it.</summary>
    public byte[] ToPng()
    {
        return PngWriter.Write((pixels ?? throw new InvalidOperationException("This page is kept as lines and letters.")).All, size.WidthPixels, size.PixelsPerPoint);
    }

    /// <summary>The finished drawing without margins, to be put between paragraphs.</summary>
    /// <param name="bottomPixels">The lower end of the drawing; null for the lower margin.</param>
    public VectorPicture ToVector(double? bottomPixels = null)
    {
        SKPicture picture = (recorder ?? throw new InvalidOperationException("This page is kept as pixels.")).EndRecording();
        double margin = MarginPoints * size.PixelsPerPoint;
        return new VectorPicture(
            picture,
            new SKRect((float)margin, (float)margin, (float)(size.WidthPixels - margin), (float)Math.Min(bottomPixels ?? double.PositiveInfinity, size.HeightPixels - margin)),
            size.PixelsPerPoint);
    }

    public void Dispose()
    {
        surface?.Dispose();
        pixels?.Dispose();
        recorder?.Dispose();
    }

    private const double GapAfterTitle = 6;
    private const double GapBeforeCaption = 7;

    private double WriteTitle(string title, double margin, double width)
    {
        using var lettering = new Lettering(TitlePoints * size.PixelsPerPoint, isBold: true);
        double y = margin;
        if (title.Length == 0)
        {
            return y;
        }

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
        if (lines.Count == 0)
        {
            return size.HeightPixels - margin;
        }

        double top = size.HeightPixels - margin - (lines.Count * lettering.LineHeight);
        for (int i = 0; i < lines.Count; i++)
        {
            lettering.Write(Canvas, lines[i], margin, top + ((i + 1) * lettering.LineHeight) - lettering.Descent, Palette.Ink);
        }

        return top - (GapBeforeCaption * size.PixelsPerPoint);
    }
}
