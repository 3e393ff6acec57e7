using System.Globalization;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Paths;

/// <summary>A path's number in a ring, on the plan and in the list.</summary>
internal static class NumberBadge
{
    /// <summary>Half its height, points.</summary>
    public const double RadiusPoints = 5.6;

    private const double SizePoints = 8.5;

    /// <summary>The ground it takes about a middle, pixels.</summary>
    public static LabelBox BoxAt(double x, double y, double pixelsPerPoint) =>
        LabelBox.Around(x, y, RadiusPoints * pixelsPerPoint, RadiusPoints * pixelsPerPoint);

    public static void Draw(SKCanvas canvas, int number, double x, double y, double pixelsPerPoint)
    {
        using SKPaint casing = Pen.Fill(Palette.Paper);
        using SKPaint rim = Pen.Line(PathPen.Colour, 0.9 * pixelsPerPoint);
        using var lettering = new Lettering(SizePoints * pixelsPerPoint, isBold: true);
        float radius = (float)(RadiusPoints * pixelsPerPoint);
        var at = new SKPoint((float)x, (float)y);
        canvas.DrawCircle(at, radius + (float)pixelsPerPoint, casing);
        canvas.DrawCircle(at, radius, rim);
        lettering.WriteMiddle(canvas, number.ToString(CultureInfo.InvariantCulture), x, y, Palette.Ink, SKTextAlign.Center);
    }
}
