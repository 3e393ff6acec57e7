using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;

namespace LinkMargin.Plots.Charts;

/// <summary>How a margin would change if the assumptions behind it were different, the most important on top.</summary>
public static class AssumptionsPicture
{
    private const double WidthPoints = 620;
    private const double NamePoints = 172;
    private const double AxisPoints = 32;
    private const double KeyGapPoints = 8;

    // Half the width of the last number on the axis.
    private const double RightPoints = 12;

    /// <summary>The size at which every line is easy to read.</summary>
    public static PictureSize FittingSize(AssumptionsRequest request, double pixelsPerPoint = 2.5)
    {
        ArgumentNullException.ThrowIfNull(request);
        int width = (int)Math.Ceiling(WidthPoints * pixelsPerPoint);
        double body = width - (2 * Page.MarginPoints * pixelsPerPoint);
        double height = (((request.Rows.Count * AssumptionsChart.BandPoints) + AxisPoints + KeyGapPoints) * pixelsPerPoint)
            + Key(body, pixelsPerPoint).HeightPixels
            + Page.FurniturePixels(width, pixelsPerPoint, request.Title, request.Caption);
        return new(width, PictureSize.NearestAllowed(height, pixelsPerPoint), pixelsPerPoint);
    }

    /// <summary>Draws a PNG.</summary>
    public static byte[] Render(AssumptionsRequest request, PictureSize size)
    {
        using Page page = Drawn(request, size, isVector: false);
        return page.ToPng();
    }

    /// <summary>Draws it as vector graphics.</summary>
    public static VectorPicture Vector(AssumptionsRequest request, PictureSize size)
    {
        using Page page = Drawn(request, size, isVector: true);
        return page.ToVector(request.Caption.Length == 0 ? ChartBottom(request, page, size.PixelsPerPoint) + (AxisPoints * size.PixelsPerPoint) : null);
    }

    private static Page Drawn(AssumptionsRequest request, PictureSize size, bool isVector)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(size);
        double s = size.PixelsPerPoint, name = NamePoints * s;
        var page = new Page(size, request.Title, request.Caption, isVector);
        LabelBox body = page.Body;
        KeyStrip key = Key(body.Width, s);
        key.Draw(page.Canvas, body.Left, body.Top);
        double bottom = ChartBottom(request, page, s), top = bottom - (request.Rows.Count * AssumptionsChart.BandPoints * s);
        new AssumptionsChart(new(body.Left + name, top, body.Right - (RightPoints * s), bottom), request, s) { NameWidth = name }.Draw(page.Canvas);
        return page;
    }

    private static double ChartBottom(AssumptionsRequest request, Page page, double s) =>
        page.Body.Top + Key(page.Body.Width, s).HeightPixels + ((KeyGapPoints + (request.Rows.Count * AssumptionsChart.BandPoints)) * s);

    private static KeyStrip Key(double widthPixels, double s)
    {
        const double BarPoints = 26;
        return new KeyStrip(
            [
                new KeyEntry(8, "as described", (canvas, box) => Upright(canvas, box, 0.8)),
                new KeyEntry(8, "required", (canvas, box) => Upright(canvas, box, 1.6)),
                new KeyEntry(BarPoints, "if this is true instead", (canvas, box) => Bar(canvas, box, passes: true)),
                new KeyEntry(BarPoints, "the same, below the required margin", (canvas, box) => Bar(canvas, box, passes: false)),
                new KeyEntry(BarPoints, "one standard deviation of the losses as described", (canvas, box) =>
                {
                    using var line = Pen.Line(Palette.SoftInk, 0.9 * s);
                    canvas.DrawLine((float)box.Left, (float)box.CentreY, (float)box.Right, (float)box.CentreY, line);
                }),
            ],
            widthPixels,
            s);

        void Upright(SkiaSharp.SKCanvas canvas, LabelBox box, double points)
        {
            using var line = Pen.Line(Palette.Ink, points * s);
            canvas.DrawLine((float)box.CentreX, (float)box.Top, (float)box.CentreX, (float)box.Bottom, line);
        }

        void Bar(SkiaSharp.SKCanvas canvas, LabelBox box, bool passes)
        {
            using var fill = Pen.Fill(passes ? Palette.QuietInk : Palette.Paper);
            using var rim = Pen.Line(Palette.Ink, 0.9 * s);
            var bar = new SkiaSharp.SKRect((float)box.Left, (float)(box.CentreY - (3.5 * s)), (float)box.Right, (float)(box.CentreY + (3.5 * s)));
            canvas.DrawRect(bar, fill);
            canvas.DrawRect(bar, rim);
        }
    }
}

/// <summary>What a picture of assumptions shows.</summary>
/// <param name="Title">Text above it.</param>
/// <param name="Caption">Text below it.</param>
/// <param name="AxisName">Name of the margins, with their unit.</param>
/// <param name="MarginDb">The margin as described, dB.</param>
/// <param name="RequiredDb">The required margin, dB.</param>
/// <param name="Rows">The assumptions, top to bottom.</param>
public sealed record AssumptionsRequest(
    string Title, string Caption, string AxisName, double MarginDb, double RequiredDb, IReadOnlyList<AssumptionRow> Rows);

/// <summary>One assumption.</summary>
/// <param name="Name">What it is about.</param>
/// <param name="Assumed">What the house file says.</param>
/// <param name="SpreadDb">Effect of one standard deviation, dB; 0 for none.</param>
/// <param name="Ends">What could be true instead.</param>
public sealed record AssumptionRow(string Name, string Assumed, double SpreadDb, IReadOnlyList<AssumptionEnd> Ends);

/// <summary>One alternative to an assumption.</summary>
/// <param name="Name">What would be true instead.</param>
/// <param name="MarginDb">The margin then, dB.</param>
/// <param name="Then">What else changes, in a few words; empty for nothing.</param>
public sealed record AssumptionEnd(string Name, double MarginDb, string Then);
