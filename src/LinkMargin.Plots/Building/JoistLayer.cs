using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Building;

/// <summary>Draws the joists of the floor above over the rooms: faint lines in their direction, at their real spacing.</summary>
internal sealed class JoistLayer(PlanView view, Level level) : PlanLayer(view)
{
    private const double LinePoints = 0.5;

    /// <summary>Key entries for the joist directions on some levels.</summary>
    public static IEnumerable<KeyEntry> Entries(IEnumerable<Level> levels, double pixelsPerPoint)
    {
        double[] runs = [.. levels.Select(level => level.Above?.Joists).OfType<JoistLayout>().Select(joists => Folded(joists.RunDegrees)).Distinct().Order()];
        foreach (double run in runs)
        {
            string direction = run switch { 0 => " (east to west)", 90 => " (north to south)", _ => "" };
            yield return new(16, $"joists of the floor above{(runs.Length > 1 ? direction : "")}", (canvas, box) => DrawSample(canvas, box, run, pixelsPerPoint));
        }
    }

    // A direction and its opposite give the same lines.
    private static double Folded(double degrees) => Math.Round(((degrees % 180) + 180) % 180, 3) % 180;

    private static SKPaint Paint(double pixelsPerPoint) => Pen.Line(Palette.FaintInk, LinePoints * pixelsPerPoint);

    private static void DrawSample(SKCanvas canvas, LabelBox box, double runDegrees, double pixelsPerPoint)
    {
        using SKPaint line = Paint(pixelsPerPoint);
        canvas.Save();
        canvas.ClipRect(new((float)box.Left, (float)box.Top, (float)box.Right, (float)box.Bottom));
        (double sine, double cosine) = Math.SinCos(runDegrees * Math.PI / 180);
        double reach = box.Width, apart = 3.2 * pixelsPerPoint;
        for (int n = -4; n <= 4; n++)
        {
            double x = box.CentreX - (n * apart * sine), y = box.CentreY - (n * apart * cosine);
            canvas.DrawLine((float)(x - (reach * cosine)), (float)(y + (reach * sine)), (float)(x + (reach * cosine)), (float)(y - (reach * sine)), line);
        }

        canvas.Restore();
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
            Clips.Without(canvas, outline);
        }

        using SKPaint line = Paint(View.PixelsPerPoint);
        foreach ((Point2 from, Point2 to) in Lines(level, joists))
        {
            canvas.DrawLine(View.Pixel(from), View.Pixel(to), line);
        }

        canvas.Restore();
    }

    /// <summary>The joists above a level, as far as its rooms extend.</summary>
    internal static IEnumerable<(Point2 From, Point2 To)> Lines(Level level, JoistLayout joists)
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
            yield return ((from * along) + (aside * left), (to * along) + (aside * left));
        }
    }
}
