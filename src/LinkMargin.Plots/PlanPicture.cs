using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Plans;
using SkiaSharp;

namespace LinkMargin.Plots;

/// <summary>The plan of a house as its file describes it, so that a mistyped wall is seen.</summary>
public static class PlanPicture
{
    private const double BetweenPoints = 12;
    private const double HeadPoints = 32;
    private const double HeadLetterPoints = 12;
    private const double HeadFigurePoints = 9.5;
    private const double BeforeKeyPoints = 6;

    /// <summary>The size at which each plan is so many points wide with no empty ground about it.</summary>
    /// <param name="request">What to draw.</param>
    /// <param name="planPoints">
    /// Width of one plan, points; null for 560 where there is one, 400 where there are several, or less for a narrow
    /// house.
    /// </param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point.</param>
    public static PictureSize FittingSize(PlanRequest request, double? planPoints = null, double pixelsPerPoint = 2.5)
    {
        PlanBounds bounds = PlanBounds.Of(request.House);
        double each = planPoints ?? bounds.SensibleWidth(request.Levels.Count > 1 ? 400 : 560);
        double width = (request.Levels.Count * (each + DimensionChain.DepthPoints)) + ((request.Levels.Count - 1) * BetweenPoints)
            + PlanPlot.LeftFiguresPoints + (2 * Page.MarginPoints);
        int widthPixels = PictureSize.NearestAllowed(width * pixelsPerPoint, pixelsPerPoint);
        double scale = each * pixelsPerPoint / bounds.WidthMetres;
        double body = widthPixels - (2 * Page.MarginPoints * pixelsPerPoint);
        double height = (scale * bounds.HeightMetres)
            + ((HeadPoints + DimensionChain.DepthPoints + PlanPlot.BottomFiguresPoints + BeforeKeyPoints) * pixelsPerPoint)
            + Key(request, new(request.House), scale, body, pixelsPerPoint).HeightPixels
            + Page.FurniturePixels(widthPixels, pixelsPerPoint, request.Title, request.Caption);
        return new(widthPixels, PictureSize.NearestAllowed(height, pixelsPerPoint), pixelsPerPoint);
    }

    /// <summary>Draws the plan; the bytes are a PNG.</summary>
    public static byte[] Render(PlanRequest request, PictureSize size)
    {
        double s = size.PixelsPerPoint;
        using var page = new Page(size, request.Title, request.Caption);
        PlanBounds bounds = PlanBounds.Of(request.House);
        var patterns = new MaterialPatterns(request.House);
        LabelBox body = page.Body;
        int count = request.Levels.Count;
        double left = body.Left + (PlanPlot.LeftFiguresPoints * s);
        double depth = DimensionChain.DepthPoints * s, between = BetweenPoints * s;
        double width = ((body.Right - left - ((count - 1) * between)) / count) - depth;
        double key = Key(request, patterns, width / bounds.WidthMetres, body.Width, s).HeightPixels;
        double top = body.Top + (HeadPoints * s) + depth;
        double bottom = body.Bottom - key - ((PlanPlot.BottomFiguresPoints + BeforeKeyPoints) * s);
        var panel = new PlanPanel(request.House, patterns, request.Unit, request.Readings);
        double scale = 1;
        for (int i = 0; i < count; i++)
        {
            double x = left + (i * (width + depth + between));
            PlanView view = PlanPlot.ViewIn(new(x, top, x + width, Math.Max(top + 1, bottom)), bounds, s);
            scale = view.PixelsPerMetre;
            var plot = new PlanPlot(view, request.Unit) { HasLeftFigures = i == 0 };
            panel.Fill(plot, request.Levels[i]);
            plot.Draw(page.Canvas);
            Level level = request.House.Levels[request.Levels[i]];
            new DimensionChain(view, level, request.Unit).Draw(page.Canvas);
            DrawHead(page.Canvas, level, view, request.Unit);
        }

        KeyStrip strip = Key(request, patterns, scale, body.Width, s);
        strip.Draw(page.Canvas, body.Left, body.Bottom - strip.HeightPixels);
        return page.ToPng();
    }

    private static KeyStrip Key(
        PlanRequest request, MaterialPatterns patterns, double pixelsPerMetre, double widthPixels, double pixelsPerPoint) =>
        new(PlanKey.Entries(request, patterns, pixelsPerMetre, pixelsPerPoint), widthPixels, pixelsPerPoint);

    private static void DrawHead(SKCanvas canvas, Level level, PlanView view, LengthUnit unit)
    {
        using Lettering bold = new(view.Points(HeadLetterPoints), isBold: true);
        using Lettering plain = new(view.Points(HeadFigurePoints), isBold: false);
        string Length(double metres) => LengthTicks.Written(metres, unit) + (unit == LengthUnit.Metres ? " m" : "");
        string figures = $"floor at {Length(level.ElevationMetres)}, clear height {Length(level.HeightMetres)}"
            + (level.Above is FloorAbove above ? $", under {above.BuildUp.Name}" : "")
            + (level.Above?.Joists is JoistLayout joists ? $", joists {Length(joists.SpacingMetres)} apart" : "");
        double top = view.Frame.Top - view.Points(DimensionChain.DepthPoints + HeadPoints);
        bold.WriteMiddle(canvas, bold.Fitted(level.Name, view.Frame.Width), view.Frame.Left, top + view.Points(7), Palette.Ink);
        plain.WriteMiddle(
            canvas, plain.Fitted(figures, view.Frame.Width), view.Frame.Left, top + view.Points(21), Palette.SoftInk);
    }
}
