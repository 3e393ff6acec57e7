using System.Globalization;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using ScottPlot;
using SkiaSharp;
using Palette = LinkMargin.Plots.Drawing.Palette;

namespace LinkMargin.Plots.Charts;

/// <summary>Measured levels over predicted levels: one panel for each model, all with the same axes.</summary>
public static class FitPicture
{
    private const double PanelPoints = 230;
    private const double BetweenPoints = 28;
    private const double HeadPoints = 34;
    private const double LeftPoints = 40;
    private const double BelowPoints = 40;

    // The axes cover at least this span, with this much space around the measurements.
    private const double LeastSpanDb = 30;
    private const double RoomDb = 2.5;

    /// <summary>The size at which its panels are square and easy to read.</summary>
    public static PictureSize FittingSize(FitRequest request, double pixelsPerPoint = 2.5)
    {
        ArgumentNullException.ThrowIfNull(request);
        double width = (request.Panels.Count * PanelPoints) + ((request.Panels.Count - 1) * BetweenPoints) + LeftPoints + (2 * Page.MarginPoints);
        int widthPixels = (int)Math.Ceiling(Math.Max(width, PictureSize.LeastPoints) * pixelsPerPoint);
        double height = ((PanelPoints + HeadPoints + BelowPoints) * pixelsPerPoint)
            + Key(request, widthPixels - (2 * Page.MarginPoints * pixelsPerPoint), pixelsPerPoint).HeightPixels
            + Page.FurniturePixels(widthPixels, pixelsPerPoint, request.Title, request.Caption);
        return new(widthPixels, PictureSize.NearestAllowed(height, pixelsPerPoint), pixelsPerPoint);
    }

    /// <summary>Draws a PNG.</summary>
    public static byte[] Render(FitRequest request, PictureSize size)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(size);
        double s = size.PixelsPerPoint;
        using var page = new Page(size, request.Title, request.Caption);
        LabelBox body = page.Body;
        KeyStrip key = Key(request, body.Width, s);
        int count = request.Panels.Count;
        double left = body.Left + (LeftPoints * s), between = BetweenPoints * s;
        double side = Math.Min(
            (body.Right - left - ((count - 1) * between)) / count, body.Height - ((HeadPoints + BelowPoints) * s) - key.HeightPixels);
        double top = body.Top + (HeadPoints * s);
        (double Least, double Greatest) range = RangeOf(request.Panels.SelectMany(panel => panel.Points));
        for (int i = 0; i < count; i++)
        {
            double x = left + (i * (side + between));
            new FitChart(new(x, top, x + side, top + side), range, s)
            {
                HasLeftFigures = i == 0,
                HeadPoints = HeadPoints,
                NoiseDb = request.NoiseDb,
            }.Draw(page.Canvas, request.Panels[i]);
        }

        key.Draw(page.Canvas, body.Left, body.Bottom - key.HeightPixels);
        return page.ToPng();
    }

    /// <summary>The range of both axes, dBm.</summary>
    private static (double Least, double Greatest) RangeOf(IEnumerable<FitPoint> points)
    {
        double[] all = [.. points.SelectMany(point => new[] { point.MeasuredDbm, point.PredictedDbm }).Where(double.IsFinite)];
        (double least, double greatest) = SheetPlot.WholeTens(all.Length == 0 ? [-90, -40] : all, RoomDb);
        return (Math.Min(least, greatest - LeastSpanDb), greatest);
    }

    /// <summary>The key of the marks that occur.</summary>
    private static KeyStrip Key(FitRequest request, double widthPixels, double pixelsPerPoint)
    {
        IReadOnlyList<FitPoint> points = request.Panels[0].Points;
        List<KeyEntry> entries = [];
        Add(points.Any(p => p.IsHeard && !p.LooksBad), isHeard: true, looksBad: false, "measurement");
        Add(points.Any(p => p.IsHeard && p.LooksBad), isHeard: true, looksBad: true, "measurement that looks wrong");
        Add(points.Any(p => !p.IsHeard), isHeard: false, looksBad: false, "nothing heard: the level is lower");
        string band = string.Create(
            CultureInfo.InvariantCulture, $"measured = predicted, ±{request.NoiseDb:0.0} dB (one standard deviation of a good measurement)");
        entries.Add(new(18, band, (canvas, box) =>
        {
            using SKPaint ground = Pen.Fill(FitChart.BandColour), line = Pen.Line(Palette.Ink, pixelsPerPoint);
            canvas.DrawRect((float)box.Left, (float)box.Top, (float)box.Width, (float)box.Height, ground);
            canvas.DrawLine((float)box.Left, (float)box.CentreY, (float)box.Right, (float)box.CentreY, line);
        }));
        return new KeyStrip(entries, widthPixels, pixelsPerPoint);

        void Add(bool isThere, bool isHeard, bool looksBad, string text)
        {
            if (isThere)
            {
                entries.Add(new(9, text, (canvas, box) =>
                {
                    using Paint paint = Paint.NewDisposablePaint();
                    FitChart.Mark(isHeard, looksBad, pixelsPerPoint).Render(canvas, new Pixel((float)box.CentreX, (float)box.CentreY), paint);
                }));
            }
        }
    }
}

/// <summary>What a picture of a fit shows: the same measurements with several models.</summary>
/// <param name="Title">Text above the panels.</param>
/// <param name="Caption">Text below them.</param>
/// <param name="Panels">One for each model, at least one.</param>
public sealed record FitRequest(string Title, string Caption, IReadOnlyList<FitPanel> Panels)
{
    /// <summary>Distance of a good measurement from a correct model, one standard deviation, dB.</summary>
    public required double NoiseDb { get; init; }
}

/// <summary>One model and the measurements.</summary>
/// <param name="Title">The name of the model.</param>
/// <param name="Figures">How good its fit is, in a few words.</param>
/// <param name="Points">The measurements.</param>
public sealed record FitPanel(string Title, string Figures, IReadOnlyList<FitPoint> Points);

/// <summary>One measurement and the prediction of a model.</summary>
/// <param name="MeasuredDbm">The measured level, dBm; if nothing was heard, the level below which the device hears nothing.</param>
/// <param name="PredictedDbm">The predicted level, dBm.</param>
/// <param name="IsHeard">Whether there was a level.</param>
/// <param name="LooksBad">Whether the measurement looks wrong.</param>
/// <param name="Label">Its label; null for none.</param>
public sealed record FitPoint(double MeasuredDbm, double PredictedDbm, bool IsHeard, bool LooksBad, string? Label = null);
