using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Labels;
using ScottPlot;
using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>One plan in its frame, with axes in metres or feet. The plot is laid out for a fixed view.</summary>
internal sealed class PlanPlot
{
    private readonly LengthUnit unit;
    private readonly List<PlanLayer> layers = [];

    /// <summary>Makes an empty plan.</summary>
    /// <param name="view">Its position and scale.</param>
    /// <param name="unit">The unit of its axes.</param>
    public PlanPlot(PlanView view, LengthUnit unit) => (View, this.unit) = (view, unit);

    public PlanView View { get; }

    /// <summary>Whether the left axis has numbers.</summary>
    public bool HasLeftFigures { get; init; } = true;

    /// <summary>Whether the bottom axis has numbers.</summary>
    public bool HasBottomFigures { get; init; } = true;

    /// <summary>Whether it is drawn on a page that keeps lines and letters.</summary>
    public bool IsVector { get; init; }

    /// <summary>Space for the numbers of the left axis beside the frame, points.</summary>
    public static double LeftFiguresPoints => 30;

    /// <summary>Space for the numbers of the bottom axis below the frame, points.</summary>
    public static double BottomFiguresPoints => 19;

    /// <summary>The view that shows bounds as large as possible in a box, at its top and centred.</summary>
    public static PlanView ViewIn(LabelBox box, PlanBounds bounds, double pixelsPerPoint)
    {
        double scale = Math.Min(box.Width / bounds.WidthMetres, box.Height / bounds.HeightMetres);
        double width = Math.Round(scale * bounds.WidthMetres), height = Math.Round(scale * bounds.HeightMetres);
        double left = Math.Round(box.CentreX - (width / 2)), top = Math.Round(box.Top);
        return new(new(left, top, left + width, top + height), bounds.Least, scale, pixelsPerPoint);
    }

    public void Add(PlanLayer layer) => layers.Add(layer);

    /// <summary>Draws frame, axes and layers.</summary>
    public void Draw(SKCanvas canvas)
    {
        using var plot = new SheetPlot(View.Frame, View.PixelsPerPoint);
        plot.Plot.DataBackground.Color = SheetPlot.ToColor(Palette.Ground);
        Point2 least = View.Least;
        double right = View.MetresX(View.Frame.Right), top = View.MetresY(View.Frame.Top);
        AxisManager axes = plot.Plot.Axes;
        axes.SetLimits(least.X, right, least.Y, top);
        double step = LengthTicks.StepAtLeast(View.Points(30) / View.PixelsPerMetre, unit);
        SetTicks(axes.Bottom, LengthTicks.Between(least.X, right, step, unit), HasBottomFigures);
        SetTicks(axes.Left, LengthTicks.Between(least.Y, top, step, unit), HasLeftFigures);
        plot.Style(axes.Bottom, HasBottomFigures);
        plot.Style(axes.Left, HasLeftFigures);
        plot.Draw(canvas, layers);
    }

    private void SetTicks(IAxis axis, IEnumerable<(double Metres, string Text)> ticks, bool hasFigures)
    {
        (double Metres, string Text)[] all = [.. ticks];
        string last = " " + LengthTicks.ShortNameOf(unit);
        axis.SetTicks(
            [.. all.Select(t => t.Metres)],
            [.. all.Select((t, i) => !hasFigures ? "" : i == all.Length - 1 ? t.Text + last : t.Text)]);
    }
}
