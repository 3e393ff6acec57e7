using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Plans;

/// <summary>
/// Distances between vertical wall lines along the top of a plan, and between horizontal ones along its right side: first
/// between neighbours, then from the first to the last. They are the lengths of the house file, so a mistyped one shows.
/// </summary>
internal sealed class DimensionChain(PlanView view, Level level, LengthUnit unit)
{
    /// <summary>Space of the two rows outside the frame, points.</summary>
    public const double DepthPoints = 30;

    private const double SizePoints = 9;
    private const double FirstRowPoints = 9;
    private const double SecondRowPoints = 22;
    private const double SameLineMetres = 0.02;
    private const double TickPoints = 2.6;

    public void Draw(SKCanvas canvas)
    {
        IEnumerable<Wall> upright = level.Walls.Where(w => Math.Abs(w.Start.X - w.End.X) < SameLineMetres);
        IEnumerable<Wall> flat = level.Walls.Where(w => Math.Abs(w.Start.Y - w.End.Y) < SameLineMetres);
        DrawChain(canvas, Places(upright.Select(w => w.Start.X)), view.PixelX, isAlongTop: true);
        DrawChain(canvas, Places(flat.Select(w => w.Start.Y)), view.PixelY, isAlongTop: false);
    }

    private static List<double> Places(IEnumerable<double> all)
    {
        var places = new List<double>();
        foreach (double place in all.Order())
        {
            if (places.Count == 0 || place - places[^1] > SameLineMetres)
            {
                places.Add(place);
            }
        }

        return places;
    }

    private void DrawChain(SKCanvas canvas, List<double> places, Func<double, double> pixel, bool isAlongTop)
    {
        if (places.Count < 2)
        {
            return;
        }

        using var lettering = new Lettering(view.Points(SizePoints), isBold: false);
        using var overall = new Lettering(view.Points(SizePoints), isBold: true);
        DrawRow(canvas, places, pixel, isAlongTop, FirstRowPoints, lettering);
        if (places.Count > 2)
        {
            DrawRow(canvas, [places[0], places[^1]], pixel, isAlongTop, SecondRowPoints, overall);
        }
    }

    // A row along the top, or along the right side with its numbers rotated.
    private void DrawRow(
        SKCanvas canvas, List<double> places, Func<double, double> pixel, bool isAlongTop, double rowPoints, Lettering lettering)
    {
        using SKPaint line = Pen.Line(Palette.SoftInk, view.Points(0.6));
        using SKPaint ground = Pen.Fill(Palette.Paper);
        double away = view.Points(rowPoints);
        SKPoint At(double along, double outwards) => isAlongTop
            ? new((float)along, (float)(view.Frame.Top - away - outwards))
            : new((float)(view.Frame.Right + away + outwards), (float)along);
        double first = pixel(places[0]), last = pixel(places[^1]), tick = view.Points(TickPoints);
        canvas.DrawLine(At(first, 0), At(last, 0), line);
        for (int i = 0; i < places.Count; i++)
        {
            double here = pixel(places[i]);
            canvas.DrawLine(At(here - tick, -tick), At(here + tick, tick), line);
            if (i == 0)
            {
                continue;
            }

            double before = pixel(places[i - 1]);
            string text = LengthTicks.Written(places[i] - places[i - 1], unit);
            if (lettering.WidthOf(text) + view.Points(4) > Math.Abs(here - before))
            {
                continue;
            }

            SKPoint middle = At((here + before) / 2, 0);
            canvas.Save();
            canvas.RotateDegrees(isAlongTop ? 0 : -90, middle.X, middle.Y);
            float half = (float)((lettering.WidthOf(text) / 2) + view.Points(2));
            canvas.DrawRect(new SKRect(middle.X - half, middle.Y - (float)tick, middle.X + half, middle.Y + (float)tick), ground);
            lettering.WriteMiddle(canvas, text, middle.X, middle.Y, Palette.Ink, SKTextAlign.Center);
            canvas.Restore();
        }
    }
}
