using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Paths;

/// <summary>The paths on one level: full where they are on it, faint where they are on another.</summary>
internal sealed class PathLayer(PlanView view, IReadOnlyList<DrawnPath> paths, int levelIndex) : PlanLayer(view)
{
    private const double CasingPoints = 1.1;

    protected override void Draw(SKCanvas canvas)
    {
        using SKPaint elsewhere = PathPen.Elsewhere(View.PixelsPerPoint);
        foreach (TrackPart part in paths.SelectMany(path => path.Track.Parts).Where(part => part.LevelIndex != levelIndex))
        {
            using SKPath line = LineOf(part);
            canvas.DrawPath(line, elsewhere);
        }

        // Strongest last, on top of the others.
        foreach (DrawnPath path in paths.Reverse())
        {
            DrawLines(canvas, path);
        }

        foreach (DrawnPath path in paths.Reverse())
        {
            PathSigns.Draw(canvas, View, path, levelIndex);
        }
    }

    private void DrawLines(SKCanvas canvas, DrawnPath path)
    {
        PathKind kind = path.Entry.Path.Path.Kind;
        double width = PathPen.WidthPoints(path.Entry.Share) + (2 * CasingPoints);
        using SKPaint casing = Pen.Line(Palette.Paper.WithAlpha(215), View.Points(width));
        using SKPaint pen = PathPen.Of(kind, path.Entry.Share, View.PixelsPerPoint);
        foreach (TrackPart part in path.Track.Parts.Where(part => part.LevelIndex == levelIndex))
        {
            using SKPath line = LineOf(part);
            canvas.DrawPath(line, casing);
            canvas.DrawPath(line, pen);
        }
    }

    private SKPath LineOf(TrackPart part)
    {
        var line = new SKPath();
        line.AddPoly([.. part.Points.Select(point => View.Pixel(point.Plan))], close: false);
        return line;
    }
}

/// <summary>Dots over the room whose diffuse field reaches the seat.</summary>
internal sealed class DiffuseLayer(PlanView view, Room room) : PlanLayer(view)
{
    protected override void Draw(SKCanvas canvas)
    {
        using SKPath outline = View.Outline(room.Outline.Corners);
        canvas.Save();
        canvas.ClipPath(outline, antialias: true);
        PathPen.Stipple(canvas, outline.Bounds, View.PixelsPerPoint);
        canvas.Restore();
    }
}

/// <summary>The style of paths: dashes for the kind, width for the share of the power. It is also readable in grey.</summary>
internal static class PathPen
{
    private const double LeastPoints = 1.1;
    private const double WholePoints = 4.2;

    /// <summary>Colour of all paths.</summary>
    public static SKColor Colour => Palette.Spot;

    /// <summary>Width of a path, points: it grows with the square root of the share of the power.</summary>
    public static double WidthPoints(double share) => LeastPoints + ((WholePoints - LeastPoints) * Math.Sqrt(Math.Clamp(share, 0, 1)));

    /// <summary>The pen of a path on its own level.</summary>
    public static SKPaint Of(PathKind kind, double share, double pixelsPerPoint)
    {
        double width = WidthPoints(share) * pixelsPerPoint;
        switch (kind)
        {
            case PathKind.Reflected:
                return Pen.Dashed(Colour, width, 7 * pixelsPerPoint, 3.5 * pixelsPerPoint);
            case PathKind.Diffracted:
                SKPaint dots = Pen.Dashed(Colour, width, 0.01 * pixelsPerPoint, width + (2.4 * pixelsPerPoint));
                dots.StrokeCap = SKStrokeCap.Round;
                return dots;
            default:
                return Pen.Line(Colour, width);
        }
    }

    /// <summary>The pen of a path on another level.</summary>
    public static SKPaint Elsewhere(double pixelsPerPoint) => Pen.Line(Colour.WithAlpha(70), 0.7 * pixelsPerPoint);

    /// <summary>Dots over the ground of a diffuse field; the canvas is clipped to it.</summary>
    public static void Stipple(SKCanvas canvas, SKRect ground, double pixelsPerPoint)
    {
        using SKPaint dot = Pen.Fill(Colour.WithAlpha(120));
        float step = (float)(5.5 * pixelsPerPoint), radius = (float)(0.75 * pixelsPerPoint);
        int row = (int)Math.Floor(ground.Top / step);
        for (float y = row * step; y < ground.Bottom + step; y += step, row++)
        {
            float shift = row % 2 == 0 ? 0 : step / 2;
            for (float x = ((float)Math.Floor(ground.Left / step) * step) + shift; x < ground.Right + step; x += step)
            {
                canvas.DrawCircle(x, y, radius, dot);
            }
        }
    }
}
