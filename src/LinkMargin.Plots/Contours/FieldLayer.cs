using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Contours;

/// <summary>
/// A field's tones, and hatching where it is below the required margin, within the rooms. Tones are computed
/// pixel by pixel from the surface of the contour lines, so that a tone ends exactly on its line.
/// </summary>
internal sealed class FieldLayer(
    PlanView view, FieldGround ground, FieldSurface surface, FieldSurface hatched, MarginColours colours, double requiredDb)
    : PlanLayer(view)
{
    /// <summary>Distance between hatch strokes, points.</summary>
    public const double HatchSpacingPoints = 6.5;

    // Rows of pixels at a time: few enough to stay in the processor's cache.
    private const int RowsAtOnce = 64;

    /// <summary>Whether the canvas keeps lines and letters: tones are then one picture, and the hatching is strokes.</summary>
    public bool IsVector { get; init; }

    private double HatchSpacingMetres => View.Points(HatchSpacingPoints) / View.PixelsPerMetre;

    /// <summary>Draws hatch strokes, dark with a light edge so that they show on every tone, and thin enough not to hide it.</summary>
    public static void DrawHatch(SKCanvas canvas, SKPath strokes, double pixelsPerPoint)
    {
        using SKPaint edge = Pen.Line(HatchInk.Edge, HatchInk.EdgePoints * pixelsPerPoint);
        using SKPaint stroke = Pen.Line(HatchInk.Stroke, HatchInk.StrokePoints * pixelsPerPoint);
        canvas.DrawPath(strokes, edge);
        canvas.DrawPath(strokes, stroke);
    }

    protected override void Draw(SKCanvas canvas)
    {
        canvas.Save();
        ground.Clip(canvas, View, bare: true);
        if (IsVector)
        {
            DrawTones(canvas, new FieldRaster(surface, colours, View), int.MaxValue);
            DrawStrokes(canvas);
        }
        else
        {
            var hatch = new HatchTones(colours.Tones, View, HatchSpacingMetres);
            DrawTones(canvas, new FieldRaster(surface, colours, View) { Hatch = hatch, Hatched = hatched, RequiredDb = requiredDb }, RowsAtOnce);
        }

        canvas.Restore();
    }

    private void DrawTones(SKCanvas canvas, FieldRaster raster, int rowsAtOnce)
    {
        for (int row = 0; row < raster.Rows; row += rowsAtOnce)
        {
            rowsAtOnce = Math.Min(rowsAtOnce, raster.Rows - row);
            using SKImage tones = raster.Image(row, rowsAtOnce);
            canvas.DrawImage(tones, (float)View.Frame.Left, (float)View.Frame.Top + row);
        }
    }

    private void DrawStrokes(SKCanvas canvas)
    {
        using var strokes = new SKPath();
        foreach (HatchLine line in Hatch.Below(hatched, requiredDb, HatchSpacingMetres))
        {
            strokes.MoveTo(View.Pixel(line.From));
            strokes.LineTo(View.Pixel(line.To));
        }

        DrawHatch(canvas, strokes, View.PixelsPerPoint);
    }
}
