using System.Globalization;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Paths;

/// <summary>The numbers of the paths on one level, each on its own line where it covers nothing else.</summary>
internal sealed class PathNumbers
{
    // Shorter pieces than this have their number beside them, points.
    private const double LeastStretchPoints = 30;
    private const double OverlapCost = 100;
    private const double OtherLineCost = 10;
    private const double WallCost = 1.5;

    // Prefers the middle of a piece to its ends, where paths come together.
    private const double FromMiddleCost = 2;

    private readonly List<(int Number, PlacedLabel Place, SKPoint From)> placed = [];
    private readonly double pixelsPerPoint;

    /// <summary>Finds places.</summary>
    /// <param name="view">The view.</param>
    /// <param name="levelIndex">The level.</param>
    /// <param name="paths">The paths, strongest first.</param>
    /// <param name="hard">Ground that no number may cover, pixels.</param>
    /// <param name="soft">Ground that numbers should not cover, pixels.</param>
    public PathNumbers(
        PlanView view, int levelIndex, IReadOnlyList<DrawnPath> paths, IReadOnlyList<LabelBox> hard, IReadOnlyList<LabelBox> soft)
    {
        pixelsPerPoint = view.PixelsPerPoint;
        List<LabelBox> taken = [.. hard];
        LabelBox[][] lines = [.. paths.Select(path => PathGround.Of(view, path, levelIndex).ToArray())];
        for (int i = 0; i < paths.Count; i++)
        {
            LabelBox[] others = [.. lines.Where((_, j) => j != i).SelectMany(boxes => boxes)];
            foreach (TrackPart part in paths[i].Track.Parts.Where(part => part.LevelIndex == levelIndex))
            {
                LabelBox onLine = OnLine(view, part, taken, others, soft);
                bool fits = view.Metres(part.PlanMetres) >= view.Points(LeastStretchPoints) && !taken.Exists(onLine.Overlaps);
                PlacedLabel place = fits
                    ? new(onLine, HasLeader: false)
                    : Beside(view, part, taken, soft, lines.SelectMany(boxes => boxes));
                placed.Add((paths[i].Entry.Number, place, view.Pixel(part.AtShare(0.5).Plan)));
                taken.Add(place.Box.Grown(view.Points(1.5)));
            }
        }
    }

    /// <summary>Ground under the numbers, pixels.</summary>
    public IEnumerable<LabelBox> Taken => placed.Select(p => p.Place.Box);

    /// <summary>Adds the number of a path without a line.</summary>
    public void Add(int number, LabelBox box) => placed.Add((number, new(box, HasLeader: false), default));

    public void Draw(SKCanvas canvas)
    {
        using SKPaint leader = Pen.Line(PathPen.Colour, 0.7 * pixelsPerPoint);
        foreach ((_, PlacedLabel place, SKPoint from) in placed.Where(p => p.Place.HasLeader))
        {
            canvas.DrawLine(from, new SKPoint((float)place.Box.CentreX, (float)place.Box.CentreY), leader);
        }

        foreach ((int number, PlacedLabel place, _) in placed)
        {
            NumberBadge.Draw(canvas, number, place.Box.CentreX, place.Box.CentreY, pixelsPerPoint);
        }
    }

    private static LabelBox OnLine(
        PlanView view, TrackPart part, List<LabelBox> taken, LabelBox[] others, IReadOnlyList<LabelBox> soft) => Places(part)
        .Select(place => (Box: BoxAt(view, place.Point), place.Share))
        .MinBy(place => Cost(place.Box, place.Share, taken, others, soft)).Box;

    // A piece of a few points would be hidden by its own number.
    private static PlacedLabel Beside(
        PlanView view, TrackPart part, IEnumerable<LabelBox> hard, IReadOnlyList<LabelBox> soft, IEnumerable<LabelBox> ground)
    {
        SKPoint middle = view.Pixel(part.AtShare(0.5).Plan);
        double size = view.Points(2 * NumberBadge.RadiusPoints);
        return new LabelPlacer(view.Frame.Grown(-view.Points(2)), hard, soft, view.Points(1.5), ground)
            .Place([new LabelRequest(middle.X, middle.Y, view.Points(2), size, size)])[0];
    }

    private static IEnumerable<(TrackPoint Point, double Share)> Places(TrackPart part)
    {
        const int Places = 25;
        for (int i = 0; i <= Places; i++)
        {
            double share = (double)i / Places;
            yield return (part.AtShare(share), share);
        }
    }

    private static LabelBox BoxAt(PlanView view, TrackPoint at)
    {
        SKPoint pixel = view.Pixel(at.Plan);
        return NumberBadge.BoxAt(pixel.X, pixel.Y, view.PixelsPerPoint);
    }

    private static double Cost(LabelBox box, double share, List<LabelBox> taken, LabelBox[] others, IReadOnlyList<LabelBox> soft)
    {
        double area = box.Width * box.Height;
        return (FromMiddleCost * 4 * (share - 0.5) * (share - 0.5))
            + (OverlapCost * taken.Count(box.Overlaps))
            + (OtherLineCost * Math.Min(3, others.Count(box.Overlaps)))
            + (WallCost * Math.Min(1, soft.Sum(s => s.SharedArea(box)) / area));
    }
}

/// <summary>Draws the numbers of paths at their places.</summary>
internal sealed class PathNumberLayer(PlanView view, PathNumbers numbers) : PlanLayer(view)
{
    protected override void Draw(SKCanvas canvas) => numbers.Draw(canvas);
}

/// <summary>A path's number in a ring, on the plan and in the list.</summary>
internal static class NumberBadge
{
    /// <summary>Half its height, points.</summary>
    public const double RadiusPoints = 5.6;

    private const double SizePoints = 8.5;

    /// <summary>The ground it takes around its centre, pixels.</summary>
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

/// <summary>Ground under a path's line, as small axis-aligned boxes that text should avoid.</summary>
internal static class PathGround
{
    private const double ApartPoints = 4;
    private const double BesidePoints = 2;

    /// <summary>The boxes along one path on a level, pixels.</summary>
    public static IEnumerable<LabelBox> Of(PlanView view, DrawnPath path, int levelIndex)
    {
        double half = view.Points((PathPen.WidthPoints(path.Entry.Share) / 2) + BesidePoints), apart = view.Points(ApartPoints);
        foreach (TrackPart part in path.Track.Parts.Where(part => part.LevelIndex == levelIndex))
        {
            SKPoint? last = null;
            foreach (SKPoint at in part.Points.Select(point => view.Pixel(point.Plan)))
            {
                if (last is SKPoint before && SKPoint.Distance(before, at) < apart)
                {
                    continue;
                }

                last = at;
                yield return LabelBox.Around(at.X, at.Y, half, half);
            }
        }
    }
}
