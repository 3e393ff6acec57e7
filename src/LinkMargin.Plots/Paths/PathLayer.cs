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

        // The strongest last, on top of all others.
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
