using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Plans;

namespace LinkMargin.Plots.Maps;

/// <summary>The map of the choice: every level side by side, the lowest on the left, in one range of colours.</summary>
public static class ChoicePicture
{
    private const double BetweenPoints = 10;
    private const double BesideBarPoints = 12;
    private const double HeadPoints = 19;
    private const double HeadLetterPoints = 12;
    private const double BeforeKeyPoints = 4;

    // What is drawn is what is above the need of the worst seat; at 0 it is just met.
    private const double JustPassesDb = 0;

    /// <summary>The size that leaves no empty ground about the plans.</summary>
    /// <param name="request">What to draw.</param>
    /// <param name="planPoints">Width of one plan, points; null for 400, 570 where there is one, or less for a narrow house.</param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point.</param>
    public static PictureSize FittingSize(ChoiceRequest request, double? planPoints = null, double pixelsPerPoint = 2.5)
    {
        PlanBounds bounds = PlanBounds.Of(request.House);
        double each = planPoints ?? bounds.SensibleWidth(request.Fields.Count > 1 ? 400 : 570);
        double width = (request.Fields.Count * each) + ((request.Fields.Count - 1) * BetweenPoints) + PlanPlot.LeftFiguresPoints
            + BesideBarPoints + ColourBar.WidthPoints + (2 * Page.MarginPoints);
        int widthPixels = PictureSize.NearestAllowed(width * pixelsPerPoint, pixelsPerPoint);
        double scale = each * pixelsPerPoint / bounds.WidthMetres;
        double body = widthPixels - (2 * Page.MarginPoints * pixelsPerPoint);
        double height = (scale * bounds.HeightMetres)
            + ((HeadPoints + PlanPlot.BottomFiguresPoints + BeforeKeyPoints) * pixelsPerPoint)
            + Key(request, scale, body, pixelsPerPoint).HeightPixels
            + Page.FurniturePixels(widthPixels, pixelsPerPoint, request.Title, request.Caption);
        return new(widthPixels, PictureSize.NearestAllowed(height, pixelsPerPoint), pixelsPerPoint);
    }

    /// <summary>Draws the maps; the bytes are a PNG.</summary>
    public static byte[] Render(ChoiceRequest request, PictureSize size)
    {
        if (request.Fields.Count == 0)
        {
            throw new ArgumentException("A map of the choice needs at least one level.", nameof(request));
        }

        double s = size.PixelsPerPoint;
        using var page = new Page(size, request.Title, request.Caption);
        PlanBounds bounds = PlanBounds.Of(request.House);
        LabelBox body = page.Body;
        int count = request.Fields.Count;
        double left = body.Left + (PlanPlot.LeftFiguresPoints * s), between = BetweenPoints * s;
        double right = body.Right - ((ColourBar.WidthPoints + BesideBarPoints) * s);
        double width = (right - left - ((count - 1) * between)) / count;
        double key = Key(request, width / bounds.WidthMetres, body.Width, s).HeightPixels;
        double top = body.Top + (HeadPoints * s), bottom = body.Bottom - key - ((PlanPlot.BottomFiguresPoints + BeforeKeyPoints) * s);
        var colours = new MarginColours(ColourRange.Covering(request.Fields, JustPassesDb), request.StepDb);
        var panel = new ChoicePanel(request.House, colours);
        PlanView view = null!;
        for (int i = 0; i < count; i++)
        {
            double x = left + (i * (width + between));
            view = PlanPlot.ViewIn(new(x, top, x + width, Math.Max(top + 1, bottom)), bounds, s);
            var plot = new PlanPlot(view, request.Unit) { HasLeftFigures = i == 0 };
            Field field = request.Fields[i];
            panel.Fill(plot, field, [.. request.Marks.Where(mark => mark.LevelIndex == field.LevelIndex)]);
            plot.Draw(page.Canvas);
            Level level = request.House.Levels[field.LevelIndex];
            using Lettering bold = new(HeadLetterPoints * s, isBold: true);
            bold.WriteMiddle(page.Canvas, bold.Fitted(level.Name, view.Frame.Width), view.Frame.Left, view.Frame.Top - (HeadPoints * s / 2), Palette.Ink);
        }

        double barLeft = view.Frame.Right + (BesideBarPoints * s);
        new ColourBar(colours, JustPassesDb, s) { Heading = "worst seat", Line = "just met" }.Draw(
            page.Canvas, new(barLeft, view.Frame.Top, barLeft + (ColourBar.WidthPoints * s), view.Frame.Bottom));
        KeyStrip strip = Key(request, view.PixelsPerMetre, body.Width, s);
        strip.Draw(page.Canvas, body.Left, body.Bottom - strip.HeightPixels);
        return page.ToPng();
    }

    private static KeyStrip Key(ChoiceRequest request, double pixelsPerMetre, double widthPixels, double pixelsPerPoint) => new(
        ChoiceKey.Entries(request.House, pixelsPerMetre, pixelsPerPoint, request.Unit), widthPixels, pixelsPerPoint);
}
