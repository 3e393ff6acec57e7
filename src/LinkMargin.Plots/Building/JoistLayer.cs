using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Building;

/// <summary>Joists of the floor above as faint ticks along their run, at their true spacing, over the rooms.</summary>
internal sealed class JoistLayer(PlanView view, Level level) : PlanLayer(view)
{
    private const double TickPoints = 9;
    private const double BetweenPoints = 26;

    private static SKPaint Paint(double pixelsPerPoint, bool isWarning)
    {
        SKPaint paint = Pen.Line(Palette.FaintInk, 0.9 * pixelsPerPoint);
        float period = (float)((TickPoints + BetweenPoints) * pixelsPerPoint);
        paint.PathEffect = SKPathEffect.CreateDash(
            [(float)(TickPoints * pixelsPerPoint), (float)(BetweenPoints * pixelsPerPoint)], isWarning ? period / 2 : 0);
        return paint;
    }

    protected override void Draw(SKCanvas canvas)
    {
        if (level.Above is not { Joists: JoistLayout joists })
        {
            return;
        }

        canvas.Save();
        using SKPath rooms = RoomClip.Of(View, level);
        canvas.ClipPath(rooms, antialias: true);
        foreach (Polygon hole in level.Above.Voids)
        {
            using SKPath outline = View.Outline(hole.Corners);
            canvas.ClipPath(outline, SKClipOperation.Difference, antialias: true);
        }

        using SKPaint even = Paint(View.PixelsPerPoint, isWarning: false), odd = Paint(View.PixelsPerPoint, isWarning: true);
        foreach ((int number, Point2 from, Point2 to) in Lines(joists))
        {
            canvas.DrawLine(View.Pixel(from), View.Pixel(to), number % 2 == 0 ? even : odd);
        }

        canvas.Restore();
    }

    private IEnumerable<(int Number, Point2 From, Point2 To)> Lines(JoistLayout joists)
    {
        (double sine, double cosine) = Math.SinCos(joists.RunDegrees * Math.PI / 180);
        Point2 along = new(cosine, sine), left = new(-sine, cosine);
        Point2[] corners = [.. level.Rooms.SelectMany(r => r.Outline.Corners)];
        if (corners.Length == 0)
        {
            yield break;
        }

        double first = joists.FirstOffsetMetres ?? 0;
        double from = corners.Min(c => Point2.Dot(c, along)), to = corners.Max(c => Point2.Dot(c, along));
        double lowest = corners.Min(c => Point2.Dot(c, left)), highest = corners.Max(c => Point2.Dot(c, left));
        int last = (int)Math.Floor((highest - first) / joists.SpacingMetres);
        for (int n = (int)Math.Ceiling((lowest - first) / joists.SpacingMetres); n <= last; n++)
        {
            double aside = first + (n * joists.SpacingMetres);
            yield return (n, (from * along) + (aside * left), (to * along) + (aside * left));
        }
    }
}
