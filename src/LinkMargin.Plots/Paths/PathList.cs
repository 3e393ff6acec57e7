using LinkMargin.Engine.Paths;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Paths;

/// <summary>The list of paths below the plans: words and numbers, one row each, with a sample of its line.</summary>
internal sealed class PathList
{
    private const double SizePoints = 9.5;
    private const double RowPoints = 15;
    private const double SamplePoints = 34;
    private const double WidestPoints = 470;
    private const double FigurePoints = 52;
    private const double PadPoints = 8;

    private readonly PathsRequest request;
    private readonly double pixelsPerPoint;
    private readonly double width;

    public PathList(PathsRequest request, double widthPixels, double pixelsPerPoint)
    {
        (this.request, this.pixelsPerPoint) = (request, pixelsPerPoint);
        width = Math.Min(widthPixels, WidestPoints * pixelsPerPoint);
    }

    /// <summary>Its height, pixels: headings, paths, the total, and a note on omitted paths.</summary>
    public double HeightPixels => (request.Paths.Count + (request.NotDrawn.Length > 0 ? 3 : 2)) * RowPoints * pixelsPerPoint;

    private static double WordsLeft => (2 * NumberBadge.RadiusPoints) + SamplePoints + (2 * PadPoints);

    public void Draw(SKCanvas canvas, double left, double top)
    {
        using Lettering plain = new(SizePoints * pixelsPerPoint, isBold: false), bold = new(SizePoints * pixelsPerPoint, isBold: true);
        using SKPaint rule = Pen.Line(Palette.SoftInk, 0.5 * pixelsPerPoint);
        double Middle(int row) => top + ((row + 0.5) * RowPoints * pixelsPerPoint);
        plain.WriteMiddle(canvas, "path", left, Middle(0), Palette.SoftInk);
        WriteRow(canvas, plain, left, Middle(0), "", "length", "loss, dB", "share", Palette.SoftInk);
        DrawRule(canvas, left, top + (RowPoints * pixelsPerPoint), rule);
        for (int i = 0; i < request.Paths.Count; i++)
        {
            PathEntry entry = request.Paths[i];
            double y = Middle(i + 1);
            double badge = left + (NumberBadge.RadiusPoints * pixelsPerPoint);
            NumberBadge.Draw(canvas, entry.Number, badge, y, pixelsPerPoint);
            DrawSample(canvas, entry, left + (((2 * NumberBadge.RadiusPoints) + PadPoints) * pixelsPerPoint), y);
            WriteRow(canvas, plain, left, y, entry.Words, entry.Length, entry.Loss, entry.ShareText, Palette.Ink);
        }

        int sum = request.Paths.Count + 1;
        DrawRule(canvas, left, top + (sum * RowPoints * pixelsPerPoint), rule);
        WriteRow(canvas, bold, left, Middle(sum), "total (sum of powers)", "", request.TotalLoss, "", Palette.Ink);
        if (request.NotDrawn.Length > 0)
        {
            string fitted = plain.Fitted(request.NotDrawn, width - (WordsLeft * pixelsPerPoint));
            plain.WriteMiddle(canvas, fitted, left + (WordsLeft * pixelsPerPoint), Middle(sum + 1), Palette.SoftInk);
        }
    }

    private void DrawRule(SKCanvas canvas, double left, double y, SKPaint rule) =>
        canvas.DrawLine((float)left, (float)y, (float)(left + width), (float)y, rule);

    private void WriteRow(
        SKCanvas canvas, Lettering lettering, double left, double y, string words, string length, string loss, string share, SKColor ink)
    {
        double figure = FigurePoints * pixelsPerPoint, right = left + width;
        double wordsLeft = left + (WordsLeft * pixelsPerPoint);
        string fitted = lettering.Fitted(words, right - (3 * figure) - (PadPoints * pixelsPerPoint) - wordsLeft);
        lettering.WriteMiddle(canvas, fitted, wordsLeft, y, ink);
        lettering.WriteMiddle(canvas, length, right - (2 * figure), y, ink, SKTextAlign.Right);
        lettering.WriteMiddle(canvas, loss, right - figure, y, ink, SKTextAlign.Right);
        lettering.WriteMiddle(canvas, share, right, y, ink, SKTextAlign.Right);
    }

    private void DrawSample(SKCanvas canvas, PathEntry entry, double left, double y)
    {
        double end = left + (SamplePoints * pixelsPerPoint);
        PathKind kind = entry.Path.Path.Kind;
        if (kind == PathKind.Diffuse)
        {
            var ground = new SKRect((float)left, (float)(y - (4.5 * pixelsPerPoint)), (float)end, (float)(y + (4.5 * pixelsPerPoint)));
            using SKPaint rim = Pen.Line(Palette.FaintInk, 0.5 * pixelsPerPoint);
            canvas.Save();
            canvas.ClipRect(ground);
            PathPen.Stipple(canvas, ground, pixelsPerPoint);
            canvas.Restore();
            canvas.DrawRect(ground, rim);
            return;
        }

        using SKPaint pen = PathPen.Of(kind, entry.Share, pixelsPerPoint);
        canvas.DrawLine((float)left, (float)y, (float)end, (float)y, pen);
    }
}
