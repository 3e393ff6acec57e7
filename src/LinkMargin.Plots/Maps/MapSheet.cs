using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Contours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Maps;

/// <summary>All maps of a house on one sheet, spots side by side and levels one above the other.</summary>
public static class MapSheet
{
    private const double HeadLetterPoints = 12;

    /// <summary>The size that leaves no empty ground about the maps.</summary>
    /// <param name="request">What to draw.</param>
    /// <param name="mapPoints">Width of one map, points; null for 300, or less for a narrow house.</param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point.</param>
    public static PictureSize FittingSize(SheetRequest request, double? mapPoints = null, double pixelsPerPoint = 2.5) =>
        SheetLayout.FittingSize(request, mapPoints ?? PlanBounds.Of(request.House).SensibleWidth(300), pixelsPerPoint);

    /// <summary>Draws the sheet; the bytes are a PNG.</summary>
    public static byte[] Render(SheetRequest request, PictureSize size)
    {
        if (request.Maps.Count == 0)
        {
            throw new ArgumentException("A sheet needs at least one map.", nameof(request));
        }

        double s = size.PixelsPerPoint;
        using var page = new Page(size, request.Title, request.Caption);
        KeyStrip key = Key(request, 1, page, s);
        var layout = new SheetLayout(request, page.Body, key.HeightPixels, s);
        var colours = new MarginColours(request.Range, request.StepDb);
        var panel = new MapPanel(request.House, colours, request.RequiredDb, MapStyle.OnSheet);
        for (int row = 0; row < layout.Levels.Count; row++)
        {
            for (int column = 0; column < layout.Spots.Count; column++)
            {
                PlanView view = layout.View(column, row);
                DrawMap(page.Canvas, request, layout, panel, view, column, row);
            }
        }

        DrawHeads(page.Canvas, request.House, layout, s);
        new ColourBar(colours, request.RequiredDb, s) { Heading = request.IsHatchedByAnother ? "median" : "margin", IsHatched = !request.IsHatchedByAnother }.Draw(page.Canvas, layout.Bar);
        key = Key(request, layout.View(0, 0).PixelsPerMetre, page, s);
        key.Draw(page.Canvas, page.Body.Left, page.Body.Bottom - key.HeightPixels);
        return page.ToPng();
    }

    private static KeyStrip Key(SheetRequest request, double pixelsPerMetre, Page page, double pixelsPerPoint) => new(
        MapKey.Entries(pixelsPerMetre, pixelsPerPoint, request.Unit, request.RequiredDb, request.IsHatchedByAnother), page.Body.Width, pixelsPerPoint);

    private static void DrawMap(
        SKCanvas canvas, SheetRequest request, SheetLayout layout, MapPanel panel, PlanView view, int column, int row)
    {
        var plot = new PlanPlot(view, request.Unit)
        {
            HasLeftFigures = column == 0,
            HasBottomFigures = row == layout.Levels.Count - 1,
        };
        SheetMap? map = request.Maps.FirstOrDefault(
            m => m.Field.Spot == layout.Spots[column] && m.Field.LevelIndex == layout.Levels[row]);
        if (map is not null)
        {
            panel.Fill(
                plot, map.Field, map.Hatched ?? map.Field, MapMarks.OfSpot(request.House, map.Field, map.Seats, request.RequiredDb, hasSpotLabel: false));
        }

        plot.Draw(canvas);
    }

    private static void DrawHeads(SKCanvas canvas, House house, SheetLayout layout, double pixelsPerPoint)
    {
        using Lettering bold = new(HeadLetterPoints * pixelsPerPoint, isBold: true);
        using Lettering plain = new(HeadLetterPoints * pixelsPerPoint, isBold: false);
        double rise = SheetLayout.HeadPoints * pixelsPerPoint / 2;
        for (int column = 0; column < layout.Spots.Count; column++)
        {
            Spot spot = layout.Spots[column];
            LabelBox frame = layout.View(column, 0).Frame;
            string where = $"on level {house.Levels[spot.LevelIndex].Name}", name = bold.Fitted(spot.Name, frame.Width);
            double end = frame.Left + bold.WidthOf(name) + (5 * pixelsPerPoint);
            bold.WriteMiddle(canvas, name, frame.Left, frame.Top - rise, Palette.Spot);
            plain.WriteMiddle(
                canvas, plain.Fitted(where, Math.Max(0, frame.Right - end)), end, frame.Top - rise, Palette.SoftInk);
        }

        for (int row = 0; row < layout.Levels.Count; row++)
        {
            LabelBox frame = layout.View(0, row).Frame;
            float x = (float)(frame.Left - ((PlanPlot.LeftFiguresPoints + (SheetLayout.SidePoints / 2)) * pixelsPerPoint));
            string name = bold.Fitted(house.Levels[layout.Levels[row]].Name, frame.Height);
            canvas.Save();
            canvas.RotateDegrees(-90, x, (float)frame.CentreY);
            bold.WriteMiddle(canvas, name, x, frame.CentreY, Palette.Ink, SKTextAlign.Center);
            canvas.Restore();
        }
    }
}
