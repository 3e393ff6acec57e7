using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Paths;

/// <summary>Ground that a path's line takes, as small upright boxes that lettering had better avoid.</summary>
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
