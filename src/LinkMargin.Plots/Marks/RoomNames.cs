using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Marks;

/// <summary>
/// Names of rooms, each as close to the middle of its room as there is free ground. A room too small or too full for
/// its name has none: seats and spots matter more.
/// </summary>
internal sealed class RoomNames
{
    private const double StepPoints = 4;
    private const double PadPoints = 2;
    private const double ClearPoints = 5;
    private const double LabelledClearPoints = 14;

    private readonly PlanView view;
    private readonly double sizePoints;
    private readonly List<(IReadOnlyList<string> Lines, LabelBox Box)> placed = [];

    /// <summary>Finds places.</summary>
    /// <param name="view">The view.</param>
    /// <param name="rooms">Rooms with the lines of text for each.</param>
    /// <param name="taken">Ground already taken, pixels.</param>
    /// <param name="sizePoints">Size of letters, points.</param>
    /// <param name="labelled">Ground that should keep space beside it for another label, pixels; null for none.</param>
    public RoomNames(
        PlanView view,
        IEnumerable<(Room Room, IReadOnlyList<string> Lines)> rooms,
        IReadOnlyList<LabelBox> taken,
        double sizePoints,
        IReadOnlyList<LabelBox>? labelled = null)
    {
        (this.view, this.sizePoints) = (view, sizePoints);
        BoxIndex clear = new(taken.Select(t => t.Grown(view.Points(ClearPoints))));
        BoxIndex roomy = labelled is null ? clear : new(
            [.. taken.Select(t => t.Grown(view.Points(ClearPoints))), .. labelled.Select(t => t.Grown(view.Points(LabelledClearPoints)))]);
        using Lettering lettering = Letters();
        foreach ((Room room, IReadOnlyList<string> lines) in rooms)
        {
            // If not all lines fit, only the name.
            foreach (string[] shorter in new string[][] { [.. lines], [lines[0]] })
            {
                double width = shorter.Max(lettering.WidthOf) + view.Points(2 * PadPoints);
                double height = ((shorter.Length - 1) * lettering.LineHeight) + lettering.CapHeight + view.Points(2 * PadPoints);
                if ((Place(room.Outline, width, height, roomy) ?? Place(room.Outline, width, height, clear)) is LabelBox box)
                {
                    placed.Add((shorter, box));
                    break;
                }
            }
        }
    }

    /// <summary>Ground under the names, pixels.</summary>
    public IEnumerable<LabelBox> Taken => placed.Select(p => p.Box);

    public void Draw(SKCanvas canvas)
    {
        using Lettering lettering = Letters();
        SKColor rim = Palette.Paper.WithAlpha(170);
        foreach ((IReadOnlyList<string> lines, LabelBox box) in placed)
        {
            double y = box.Top + view.Points(PadPoints) + (lettering.CapHeight / 2);
            foreach (string line in lines)
            {
                lettering.WriteMiddleRimmed(
                    canvas, line, box.CentreX, y, Palette.Ink, rim, view.Points(1.2), SKTextAlign.Center);
                y += lettering.LineHeight;
            }
        }
    }

    private LabelBox? Place(Polygon outline, double width, double height, BoxIndex taken)
    {
        // Only the visible part of a room that extends beyond the picture.
        LabelBox frame = view.Frame;
        double left = Math.Max(frame.Left, view.PixelX(outline.Least.X)), right = Math.Min(frame.Right, view.PixelX(outline.Greatest.X));
        double top = Math.Max(frame.Top, view.PixelY(outline.Greatest.Y)), bottom = Math.Min(frame.Bottom, view.PixelY(outline.Least.Y));
        double middleX = (left + right) / 2, middleY = (top + bottom) / 2, step = view.Points(StepPoints);
        LabelBox? best = null;
        double bestDistance = double.PositiveInfinity;
        for (double y = middleY - (step * Math.Floor((middleY - top) / step)); y < bottom; y += step)
        {
            for (double x = middleX - (step * Math.Floor((middleX - left) / step)); x < right; x += step)
            {
                double distance = double.Hypot(x - middleX, y - middleY);
                LabelBox box = LabelBox.Around(x, y, width / 2, height / 2);
                if (distance < bestDistance && !taken.Overlaps(box) && IsInside(outline, box))
                {
                    (best, bestDistance) = (box, distance);
                }
            }
        }

        return best;
    }

    private bool IsInside(Polygon outline, LabelBox box)
    {
        LabelBox frame = view.Frame;
        bool Holds(double x, double y) => outline.Contains(new(view.MetresX(x), view.MetresY(y)));
        return box.Left >= frame.Left && box.Right <= frame.Right && box.Top >= frame.Top && box.Bottom <= frame.Bottom
            && Holds(box.Left, box.Top) && Holds(box.Right, box.Top) && Holds(box.Left, box.Bottom)
            && Holds(box.Right, box.Bottom) && Holds(box.CentreX, box.CentreY);
    }

    private Lettering Letters() => new(view.Points(sizePoints), isBold: false);
}

/// <summary>Draws the names of rooms at their places.</summary>
internal sealed class RoomNameLayer(PlanView view, RoomNames names) : PlanLayer(view)
{
    protected override void Draw(SKCanvas canvas) => names.Draw(canvas);
}
