using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Contours;

/// <summary>
/// Finds where on a contour line a number is easy to read: a piece as long as the number, nearly straight, away from everything
/// already on the sheet. At most one number per given length of line.
/// </summary>
internal sealed class ContourTexts(LabelBox frame, IEnumerable<LabelBox> taken)
{
    private const double StraightShare = 0.965;
    private readonly List<LabelBox> obstacles = [.. taken];

    /// <summary>Places numbers on one line and marks their ground as taken.</summary>
    /// <param name="line">The line, pixels.</param>
    /// <param name="text">The number.</param>
    /// <param name="width">Its width, pixels.</param>
    /// <param name="height">Its height, pixels.</param>
    /// <param name="everyPixels">Least length of line between numbers.</param>
    /// <param name="fits">
    /// Whether the lines at a place are far enough apart; where they crowd, a number would hide its neighbours.
    /// </param>
    public IEnumerable<ContourText> Place(
        IReadOnlyList<SKPoint> line, string text, double width, double height, double everyPixels, Func<SKPoint, bool> fits)
    {
        double[] along = Lengths(line);
        double step = Math.Max(2, width / 4), next = width;
        for (double at = width; at < along[^1] - width; at += step)
        {
            if (at < next)
            {
                continue;
            }

            SKPoint before = At(line, along, at - (width / 2)), after = At(line, along, at + (width / 2));
            SKPoint here = At(line, along, at);
            if (SKPoint.Distance(before, after) < StraightShare * width)
            {
                continue;
            }

            double turn = Math.Atan2(after.Y - before.Y, after.X - before.X);
            turn = turn > Math.PI / 2 ? turn - Math.PI : turn <= -Math.PI / 2 ? turn + Math.PI : turn;
            double sine = Math.Abs(Math.Sin(turn)), cosine = Math.Abs(Math.Cos(turn));
            LabelBox box = LabelBox.Around(
                here.X, here.Y, ((width * cosine) + (height * sine)) / 2, ((width * sine) + (height * cosine)) / 2);
            if (!frame.Contains(box) || obstacles.Exists(box.Overlaps) || !fits(here))
            {
                continue;
            }

            obstacles.Add(box.Grown(height / 2));
            next = at + everyPixels;
            yield return new(text, here.X, here.Y, turn * 180 / Math.PI, box);
        }
    }

    private static double[] Lengths(IReadOnlyList<SKPoint> line)
    {
        double[] along = new double[line.Count];
        for (int i = 1; i < line.Count; i++)
        {
            along[i] = along[i - 1] + SKPoint.Distance(line[i - 1], line[i]);
        }

        return along;
    }

    private static SKPoint At(IReadOnlyList<SKPoint> line, double[] along, double length)
    {
        int i = Array.BinarySearch(along, length);
        i = Math.Clamp(i < 0 ? ~i : i, 1, line.Count - 1);
        double span = along[i] - along[i - 1];
        float t = span > 0 ? (float)((length - along[i - 1]) / span) : 0;
        return new(line[i - 1].X + (t * (line[i].X - line[i - 1].X)), line[i - 1].Y + (t * (line[i].Y - line[i - 1].Y)));
    }
}

/// <summary>A number written along a contour line.</summary>
/// <param name="Text">The margin, dB.</param>
/// <param name="X">Centre, pixels.</param>
/// <param name="Y">Centre, pixels.</param>
/// <param name="TurnDegrees">Rotation, clockwise, never upside down.</param>
/// <param name="Box">Its bounding box.</param>
internal sealed record ContourText(string Text, double X, double Y, double TurnDegrees, LabelBox Box);
