using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Labels;
using ScottPlot;
using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>One plan in its frame, with axes in metres or feet. The plot is laid out to a view fixed beforehand.</summary>
internal sealed class PlanPlot
{
    private readonly LengthUnit unit;
    private readonly List<PlanLayer> layers = [];

    /// <summary>Makes an empty plan.</summary>
    /// <param name="view">Where it goes, and its scale.</param>
    /// <param name="unit">The unit of its axes.</param>
    public PlanPlot(PlanView view, LengthUnit unit)
    {
        EmbeddedFontResolver.Install();
        (View, this.unit) = (view, unit);
    }

    public PlanView View { get; }

    /// <summary>Whether the left axis has figures.</summary>
    public bool HasLeftFigures { get; init; } = true;

    /// <summary>Whether the bottom axis has figures.</summary>
    public bool HasBottomFigures { get; init; } = true;

    /// <summary>Room the figures of an axis need beside the frame, points.</summary>
    public static double LeftFiguresPoints => 30;

    /// <summary>Room the figures of an axis need below the frame, points.</summary>
    public static double BottomFiguresPoints => 19;

    /// <summary>The view that shows bounds as large as fits in a box, in its middle.</summary>
    public static PlanView ViewIn(LabelBox box, PlanBounds bounds, double pixelsPerPoint)
    {
        double scale = Math.Min(box.Width / bounds.WidthMetres, box.Height / bounds.HeightMetres);
        double width = Math.Round(scale * bounds.WidthMetres), height = Math.Round(scale * bounds.HeightMetres);
        double left = Math.Round(box.CentreX - (width / 2)), top = Math.Round(box.Top);
        return new(new(left, top, left + width, top + height), bounds.Least, scale, pixelsPerPoint);
    }

    // The plot draws frame and ticks without softening, and so not at all when thinner than a pixel.
    private float LineWidth => (float)Math.Max(1, View.Points(0.6));

    public void Add(PlanLayer layer) => layers.Add(layer);

    /// <summary>Draws frame, axes and layers.</summary>
    public void Draw(SKCanvas canvas)
    {
        using var plot = new Plot();

        // The plot stands on a sheet with other things: it must not wipe it.
        plot.RenderManager.RenderActions.RemoveAll(a =>
            a is ScottPlot.Rendering.RenderActions.ClearCanvas or ScottPlot.Rendering.RenderActions.RenderFigureBackground);
        plot.DataBackground.Color = Color.FromSKColor(Palette.Ground);
        plot.HideGrid();
        SetAxes(plot);
        LabelBox f = View.Frame;
        plot.Layout.Fixed(new PixelRect((float)f.Left, (float)f.Right, (float)f.Bottom, (float)f.Top));
        SKRectI device = canvas.DeviceClipBounds;
        var sheet = new PixelRect(device.Left, device.Right, device.Bottom, device.Top);

        // A new plot draws itself twice, because its limits have changed since it last did; on a sheet that is not wiped
        // in between, translucent ink would come out twice as dark. So it draws for the first time on nothing.
        using (var nothing = new SKNoDrawCanvas(device.Width, device.Height))
        {
            plot.Render(nothing, sheet);
        }

        foreach (PlanLayer layer in layers)
        {
            plot.Add.Plottable(layer);
        }

        plot.Render(canvas, sheet);
    }

    private void SetAxes(Plot plot)
    {
        LabelBox f = View.Frame;
        Point2 least = View.Least;
        double right = View.MetresX(f.Right), top = View.MetresY(f.Top);
        plot.Axes.SetLimits(least.X, right, least.Y, top);
        double step = LengthTicks.StepAtLeast(View.Points(30) / View.PixelsPerMetre, unit);
        Style(plot.Axes.Bottom, LengthTicks.Between(least.X, right, step, unit), HasBottomFigures);
        Style(plot.Axes.Left, LengthTicks.Between(least.Y, top, step, unit), HasLeftFigures);
        foreach (IAxis axis in new IAxis[] { plot.Axes.Right, plot.Axes.Top })
        {
            axis.FrameLineStyle.Width = LineWidth;
            axis.FrameLineStyle.Color = Color.FromSKColor(Palette.SoftInk);
        }
    }

    private void Style(IAxis axis, IEnumerable<(double Metres, string Text)> ticks, bool hasFigures)
    {
        (double Metres, string Text)[] all = [.. ticks];
        string last = " " + LengthTicks.ShortNameOf(unit);
        axis.SetTicks(
            [.. all.Select(t => t.Metres)],
            [.. all.Select((t, i) => !hasFigures ? "" : i == all.Length - 1 ? t.Text + last : t.Text)]);
        var ink = Color.FromSKColor(Palette.SoftInk);
        axis.FrameLineStyle.Width = LineWidth;
        axis.FrameLineStyle.Color = ink;
        axis.MajorTickStyle.Length = (float)View.Points(3.5);
        axis.MajorTickStyle.Width = LineWidth;
        axis.MajorTickStyle.Color = ink;
        axis.TickLabelStyle.FontName = EmbeddedFonts.Family;
        axis.TickLabelStyle.FontSize = (float)View.Points(9);
        axis.TickLabelStyle.ForeColor = ink;
        axis.TickLabelStyle.IsVisible = hasFigures;
    }
}
