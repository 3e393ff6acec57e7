using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Paths;

/// <summary>A section below the plans of a picture: at their scale, or smaller where it would be too wide or too high.</summary>
/// <param name="request">What it shows.</param>
/// <param name="planPixelsPerMetre">The scale of the plans.</param>
/// <param name="widthPixels">Room from side to side, pixels.</param>
/// <param name="pixelsPerPoint">Pixels for a typographic point.</param>
internal sealed class SectionStrip(SectionRequest request, double planPixelsPerMetre, double widthPixels, double pixelsPerPoint)
{
    private const double BeforePoints = 12;
    private const double HeadPoints = 18;
    private const double HeadLetterPoints = 12;
    private const double MostPoints = 420;

    private readonly SectionPanel panel = new(request);

    /// <summary>Its height with its head, pixels.</summary>
    public double HeightPixels => (PixelsPerMetre * Bounds.HeightMetres) + ((BeforePoints + HeadPoints + PlanPlot.BottomFiguresPoints) * pixelsPerPoint);

    private PlanBounds Bounds => panel.Section.Bounds;

    private double PixelsPerMetre
    {
        get
        {
            double width = Math.Max(1, widthPixels - ((PlanPlot.LeftFiguresPoints + SectionPanel.BesidePoints) * pixelsPerPoint));
            return Math.Min(planPixelsPerMetre, Math.Min(width / Bounds.WidthMetres, MostPoints * pixelsPerPoint / Bounds.HeightMetres));
        }
    }

    /// <summary>Draws it.</summary>
    /// <param name="canvas">Where to.</param>
    /// <param name="x">Its left side, pixels.</param>
    /// <param name="y">Its top, pixels.</param>
    /// <param name="pathsOn">The paths that run on lines, on a cut.</param>
    public void Draw(SKCanvas canvas, double x, double y, Func<SectionCut, PlanView, IReadOnlyList<DrawnPath>> pathsOn)
    {
        double scale = PixelsPerMetre, s = pixelsPerPoint;
        double left = Math.Round(x + (PlanPlot.LeftFiguresPoints * s)), top = Math.Round(y + ((BeforePoints + HeadPoints) * s));
        var frame = new LabelBox(left, top, left + Math.Round(scale * Bounds.WidthMetres), top + Math.Round(scale * Bounds.HeightMetres));
        var view = new PlanView(frame, Bounds.Least, scale, s);
        panel.Draw(canvas, view, pathsOn(panel.Section.Cut, view));
        using Lettering bold = new(HeadLetterPoints * s, isBold: true), plain = new(HeadLetterPoints * s, isBold: false);
        double middle = top - (HeadPoints / 2 * s);
        string head = "section ", rest = $"from {request.From.Name} to {request.To.Name}, {request.Projected} projected on it";
        bold.WriteMiddle(canvas, head, left, middle, Palette.Ink);
        plain.WriteMiddle(canvas, plain.Fitted(rest, x + widthPixels - left - bold.WidthOf(head)), left + bold.WidthOf(head), middle, Palette.SoftInk);
    }
}
