using System.Globalization;
using LinkMargin.Plots.Labels;
using ScottPlot;
using ScottPlot.Rendering.RenderActions;
using ScottPlot.TickGenerators;
using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>A plot of the drawing library in a fixed frame, on a sheet that also has other content.</summary>
internal sealed class SheetPlot : IDisposable
{
    private const double LetterPoints = 9;
    private const double LinePoints = 0.6;
    private const double TickPoints = 3.5;
    private const double TickApartPoints = 26;
    private const double LabelGapPoints = 3;

    private readonly double pixelsPerPoint;
    private readonly LabelBox frame;

    /// <summary>Makes an empty plot without a grid.</summary>
    /// <param name="frame">The data area, pixels.</param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point.</param>
    public SheetPlot(LabelBox frame, double pixelsPerPoint)
    {
        EmbeddedFontResolver.Install();
        (this.frame, this.pixelsPerPoint) = (frame, pixelsPerPoint);
        Plot = new Plot();

        // It must not clear the sheet it is drawn on.
        Plot.RenderManager.RenderActions.RemoveAll(action => action is ClearCanvas or RenderFigureBackground);
        Plot.HideGrid();
        Plot.Layout.Fixed(new PixelRect((float)frame.Left, (float)frame.Right, (float)frame.Bottom, (float)frame.Top));
        foreach (IAxis axis in new IAxis[] { Plot.Axes.Left, Plot.Axes.Bottom, Plot.Axes.Right, Plot.Axes.Top })
        {
            axis.FrameLineStyle.Width = LineWidth;
            axis.FrameLineStyle.Color = ToColor(Palette.SoftInk);
        }
    }

    /// <summary>The library's plot.</summary>
    public Plot Plot { get; }

    // The library draws frames and ticks without antialiasing, and so not at all if thinner than a pixel.
    private float LineWidth => (float)Math.Max(1, LinePoints * pixelsPerPoint);

    /// <summary>Converts to the library's colour.</summary>
    public static Color ToColor(SKColor colour) => Color.FromSKColor(colour);

    /// <summary>Sets the ticks and text of an axis.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="hasFigures">Whether its ticks have numbers.</param>
    public void Style(IAxis axis, bool hasFigures)
    {
        Color ink = ToColor(Palette.SoftInk);
        axis.MajorTickStyle.Length = (float)(TickPoints * pixelsPerPoint);
        axis.MajorTickStyle.Width = LineWidth;
        axis.MajorTickStyle.Color = ink;
        axis.MinorTickStyle.Length = 0;
        axis.MinorTickStyle.Width = 0;
        axis.TickLabelStyle.FontName = EmbeddedFonts.Family;
        axis.TickLabelStyle.FontSize = (float)(LetterPoints * pixelsPerPoint);
        axis.TickLabelStyle.ForeColor = ink;
        axis.TickLabelStyle.IsVisible = hasFigures;
    }

    /// <summary>Gives an axis a name and ticks at whole decibels.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="name">What it shows, with its unit; null for an axis without numbers.</param>
    public void StyleDecibels(IAxis axis, string? name)
    {
        Style(axis, name is not null);
        axis.TickGenerator = new NumericAutomatic
        {
            IntegerTicksOnly = true,
            MinimumTickSpacing = (float)(TickApartPoints * pixelsPerPoint),
            LabelFormatter = db => MarginText.WithSign(db.ToString("0", CultureInfo.InvariantCulture)),
        };
        axis.Label.Text = name ?? "";
        axis.Label.OffsetX = axis.Edge == Edge.Left ? (float)(-LabelGapPoints * pixelsPerPoint) : 0;
        axis.Label.FontName = EmbeddedFonts.Family;
        axis.Label.FontSize = (float)(LetterPoints * pixelsPerPoint);
        axis.Label.Bold = false;
        axis.Label.ForeColor = ToColor(Palette.Ink);
    }

    /// <summary>Draws the frame, the axes and the plot's content, then some layers on top.</summary>
    public void Draw(SKCanvas canvas, params IEnumerable<IPlottable> layers)
    {
        SKRectI device = canvas.DeviceClipBounds;
        var sheet = new PixelRect(device.Left, device.Right, device.Bottom, device.Top);

        // A new plot draws itself twice, because its limits change the first time. Without clearing in between, translucent
        // ink would come out twice as dark. So the first drawing goes to an empty canvas.
        using (var nothing = new SKNoDrawCanvas(device.Width, device.Height))
        {
            Plot.Render(nothing, sheet);
        }

        foreach (IPlottable layer in layers)
        {
            Plot.Add.Plottable(layer);
        }

        Plot.Render(canvas, sheet);
    }

    /// <summary>The pixel position of a horizontal coordinate.</summary>
    public double PixelX(double x)
    {
        CoordinateRange range = Plot.Axes.Bottom.Range.ToCoordinateRange;
        return frame.Left + ((x - range.Value1) / (range.Value2 - range.Value1) * frame.Width);
    }

    /// <summary>The pixel position of a vertical coordinate.</summary>
    public double PixelY(double y)
    {
        CoordinateRange range = Plot.Axes.Left.Range.ToCoordinateRange;
        return frame.Bottom - ((y - range.Value1) / (range.Value2 - range.Value1) * frame.Height);
    }

    /// <summary>The limits of an axis: whole tens of decibels that contain some values.</summary>
    /// <param name="values">The values, dB.</param>
    /// <param name="roomDb">Space beyond the least and the greatest value.</param>
    public static (double Least, double Greatest) WholeTens(IReadOnlyCollection<double> values, double roomDb) =>
        (Math.Floor((values.Min() - roomDb) / 10) * 10, Math.Ceiling((values.Max() + roomDb) / 10) * 10);

    /// <inheritdoc/>
    public void Dispose() => Plot.Dispose();
}
