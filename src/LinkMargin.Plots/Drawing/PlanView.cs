using LinkMargin.Engine.Geometry;
using LinkMargin.Plots.Labels;
using ScottPlot;
using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>Converts metres on a plan to pixels on a picture. This is the only place where y is flipped: pixels count downwards.</summary>
/// <param name="Frame">The drawing area, pixels.</param>
/// <param name="Least">The plan point at the frame's lower left corner, metres.</param>
/// <param name="PixelsPerMetre">Scale, the same in both directions.</param>
/// <param name="PixelsPerPoint">Pixels for a typographic point.</param>
internal sealed record PlanView(LabelBox Frame, Point2 Least, double PixelsPerMetre, double PixelsPerPoint)
{
    public double PixelX(double x) => Frame.Left + ((x - Least.X) * PixelsPerMetre);

    public double PixelY(double y) => Frame.Bottom - ((y - Least.Y) * PixelsPerMetre);

    public SKPoint Pixel(Point2 p) => new((float)PixelX(p.X), (float)PixelY(p.Y));

    public double MetresX(double pixelX) => Least.X + ((pixelX - Frame.Left) / PixelsPerMetre);

    public double MetresY(double pixelY) => Least.Y + ((Frame.Bottom - pixelY) / PixelsPerMetre);

    public double Points(double points) => points * PixelsPerPoint;

    public double Metres(double metres) => metres * PixelsPerMetre;

    /// <summary>A closed path through plan points.</summary>
    public SKPath Outline(IReadOnlyList<Point2> corners)
    {
        var path = new SKPath();
        path.AddPoly([.. corners.Select(Pixel)], close: true);
        return path;
    }
}

/// <summary>Something that we draw ourselves, on a plot that supplies frame, axes and ticks.</summary>
internal abstract class PlanLayer(PlanView view) : IPlottable
{
    /// <inheritdoc/>
    public bool IsVisible { get; set; } = true;

    /// <inheritdoc/>
    public IAxes Axes { get; set; } = new Axes();

    /// <inheritdoc/>
    public IEnumerable<LegendItem> LegendItems => [];

    /// <summary>Converts metres to pixels; known before the plot is laid out.</summary>
    public PlanView View { get; } = view;

    /// <inheritdoc/>
    public AxisLimits GetAxisLimits() => AxisLimits.NoLimits;

    /// <inheritdoc/>
    public void Render(RenderPack rp) => Draw(rp.Canvas);

    /// <summary>Draws it; the plot has clipped the canvas to the view's frame.</summary>
    protected abstract void Draw(SKCanvas canvas);
}
