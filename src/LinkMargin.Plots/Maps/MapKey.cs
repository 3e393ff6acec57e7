using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Contours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Marks;
using SkiaSharp;

namespace LinkMargin.Plots.Maps;

/// <summary>What the signs of a map mean.</summary>
internal static class MapKey
{
    public static IReadOnlyList<KeyEntry> Entries(
        double pixelsPerMetre, double pixelsPerPoint, LengthUnit unit, double requiredDb, bool isHatchedByAnother) =>
    [
        ScaleBar.For(pixelsPerMetre, pixelsPerPoint, unit),
        Mark(MarkKind.SpotHere, "spot", pixelsPerPoint),
        Mark(MarkKind.SpotElsewhere, "spot on another level", pixelsPerPoint),
        Mark(MarkKind.SeatPasses, "seat passes", pixelsPerPoint),
        Mark(MarkKind.SeatBelow, "seat does not pass", pixelsPerPoint),
        .. isHatchedByAnother ? [new KeyEntry(0, "seats' figures: medians", (_, _) => { })] : Array.Empty<KeyEntry>(),
        new(20, $"hatched: below {MarginText.Bare(requiredDb)} dB{(isHatchedByAnother ? " to count on" : "")}", (canvas, box) => DrawHatch(canvas, box, pixelsPerPoint)),
    ];

    /// <summary>A mark and what it stands for.</summary>
    public static KeyEntry Mark(MarkKind kind, string text, double pixelsPerPoint) =>
        new(
            11,
            text,
            (canvas, box) => MarkShape.Draw(canvas, kind, new((float)box.CentreX, (float)box.CentreY), null, pixelsPerPoint));

    /// <summary>A patch of the hatch.</summary>
    public static void DrawHatch(SKCanvas canvas, LabelBox box, double pixelsPerPoint)
    {
        var rect = new SKRect((float)box.Left, (float)box.Top, (float)box.Right, (float)box.Bottom);
        canvas.Save();
        canvas.ClipRect(rect);
        using var strokes = new SKPath();
        double shift = FieldLayer.HatchSpacingPoints * Math.Sqrt(2) * pixelsPerPoint;
        for (double x = box.Left - box.Height; x < box.Right; x += shift)
        {
            strokes.MoveTo((float)x, (float)box.Bottom);
            strokes.LineTo((float)(x + box.Height), (float)box.Top);
        }

        FieldLayer.DrawHatch(canvas, strokes, pixelsPerPoint);
        canvas.Restore();
        using SKPaint rim = Pen.Line(Palette.SoftInk, 0.6 * pixelsPerPoint);
        canvas.DrawRect(rect, rim);
    }
}
