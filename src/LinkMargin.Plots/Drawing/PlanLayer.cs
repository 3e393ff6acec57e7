using ScottPlot;
using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>One thing drawn on a plan, by our own hand, on a plot that supplies frame, axes and ticks.</summary>
internal abstract class PlanLayer(PlanView view) : IPlottable
{
    /// <inheritdoc/>
    public bool IsVisible { get; set; } = true;

    /// <inheritdoc/>
    public IAxes Axes { get; set; } = new Axes();

    /// <inheritdoc/>
    public IEnumerable<LegendItem> LegendItems => [];

    /// <summary>From metres to pixels, known before the plot is laid out.</summary>
    public PlanView View { get; } = view;

    /// <inheritdoc/>
    public AxisLimits GetAxisLimits() => AxisLimits.NoLimits;

    /// <inheritdoc/>
    public void Render(RenderPack rp) => Draw(rp.Canvas);

    /// <summary>Draws it; the plot has clipped the canvas to the view's frame.</summary>
    protected abstract void Draw(SKCanvas canvas);
}
