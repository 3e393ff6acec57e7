using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Contours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Maps;

/// <summary>All maps of a house on one sheet: a column for each spot, best first, and a row for each level.</summary>
public static class MapSheet
{
    private const double HeadLetterPoints = 13;
    private const double DetailLetterPoints = 11;

    /// <summary>The size that leaves no empty space around the maps.</summary>
    /// <param name="request">What to draw.</param>
    /// <param name="mapPoints">Width of one map, points; null for 300, or less for a narrow house.</param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point.</param>
    public static PictureSize FittingSize(SheetRequest request, double? mapPoints = null, double pixelsPerPoint = 2.5)
    {
        double panelPoints = mapPoints ?? PlanBounds.Of(request.House).SensibleWidth(300), s = pixelsPerPoint;
        return SheetLayout.FittingSize(request, panelPoints, s, (scale, width) =>
        {
            // Which seats become numbers depends on the maps' size, not on the sheet's height.
            PlanBounds bounds = PlanBounds.Of(request.House);
            PlanView view = PlanPlot.ViewIn(new(0, 0, panelPoints * s, scale * bounds.HeightMetres), bounds, s);
            return Key(request, SeatNumbers.Of(request, _ => view), scale, width, s).HeightPixels;
        });
    }

    /// <summary>Draws a PNG.</summary>
    public static byte[] Render(SheetRequest request, PictureSize size)
    {
        using Page page = Drawn(request, size, isVector: false);
        return page.ToPng();
    }

    /// <summary>Draws the same as vector graphics.</summary>
    public static VectorPicture Vector(SheetRequest request, PictureSize size)
    {
        using Page page = Drawn(request, size, isVector: true);
        return page.ToVector();
    }

    private static Page Drawn(SheetRequest request, PictureSize size, bool isVector)
    {
        if (request.Maps.Count == 0)
        {
            throw new ArgumentException("A sheet needs at least one map.", nameof(request));
        }

        double s = size.PixelsPerPoint;
        var page = new Page(size, request.Title, request.Caption, isVector);
        IReadOnlyList<SeatNumber> numbers = [];
        KeyStrip key = Key(request, numbers, 1, page.Body.Width, s);
        SheetLayout layout = new(request, page.Body, key.HeightPixels, s);
        for (int round = 0; round < 2; round++)
        {
            // The key's height decides the maps' scale, and the scale decides which seats are in the key.
            double before = key.HeightPixels;
            numbers = SeatNumbers.Of(request, map => layout.ViewOf(map.Field));
            key = Key(request, numbers, layout.View(0, 0).PixelsPerMetre, page.Body.Width, s);
            layout = new(request, page.Body, key.HeightPixels, s);
            if (key.HeightPixels == before)
            {
                break;
            }
        }

        MapContent content = ContentOf(request);
        var colours = new MarginColours(request.Range, request.StepDb);
        MapPanel panel = SeatNumbers.PanelOf(request, colours);
        for (int row = 0; row < layout.Levels.Count; row++)
        {
            for (int column = 0; column < layout.Spots.Count; column++)
            {
                DrawMap(page, request, layout, panel, numbers, column, row);
            }
        }

        DrawHeads(page.Canvas, request, layout, s);
        new ColourBar(colours, request.RequiredDb, s)
        {
            Heading = request.IsHatchedByAnother ? "median" : "margin",
            IsHatched = !request.IsHatchedByAnother,
            AlsoRequiredDb = content.AlsoRequiredDb,
        }.Draw(page.Canvas, layout.Bar);
        key.Draw(page.Canvas, page.Body.Left, page.Body.Bottom - key.HeightPixels);
        return page;
    }

    private static KeyStrip Key(SheetRequest request, IReadOnlyList<SeatNumber> numbers, double pixelsPerMetre, double widthPixels, double pixelsPerPoint) => new(
        [.. MapKey.Entries(ContentOf(request), pixelsPerMetre, pixelsPerPoint), .. SeatNumbers.Entries(numbers, pixelsPerPoint)],
        widthPixels,
        pixelsPerPoint);

    private static MapContent ContentOf(SheetRequest request) =>
        MapContent.Of(request.House, [.. request.Maps.Select(map => map.Field)], request.Maps.SelectMany(map => map.Seats), request.RequiredDb, request.Unit) with
        {
            IsHatchedByAnother = request.IsHatchedByAnother,
        };

    private static void DrawMap(
        Page page, SheetRequest request, SheetLayout layout, MapPanel panel, IReadOnlyList<SeatNumber> numbers, int column, int row)
    {
        var plot = new PlanPlot(layout.View(column, row), request.Unit)
        {
            HasLeftFigures = column == 0,
            HasBottomFigures = row == layout.Levels.Count - 1,
            IsVector = page.IsVector,
        };
        SheetMap? map = request.Maps.FirstOrDefault(
            m => m.Field.Spot == layout.Spots[column] && m.Field.LevelIndex == layout.Levels[row]);
        if (map is not null)
        {
            panel.Fill(
                plot,
                map.Field,
                map.Hatched ?? map.Field,
                SeatNumbers.MarksOf(request, map, numbers),
                RequiredMargins.Others(map.Seats.Select(mark => mark.Seat), request.RequiredDb));
        }

        plot.Draw(page.Canvas);
    }

    private static void DrawHeads(SKCanvas canvas, SheetRequest request, SheetLayout layout, double pixelsPerPoint)
    {
        using Lettering bold = new(HeadLetterPoints * pixelsPerPoint, isBold: true);
        using Lettering plain = new(HeadLetterPoints * pixelsPerPoint, isBold: false);
        using Lettering small = new(DetailLetterPoints * pixelsPerPoint, isBold: false);
        double rise = SheetLayout.HeadPoints * pixelsPerPoint / 2;
        for (int column = 0; column < layout.Spots.Count; column++)
        {
            Spot spot = layout.Spots[column];
            LabelBox frame = layout.View(column, 0).Frame;
            string level = request.House.Levels[spot.LevelIndex].Name, name = bold.Fitted(spot.Name, frame.Width);
            double end = frame.Left + bold.WidthOf(name) + (5 * pixelsPerPoint), room = Math.Max(0, frame.Right - end);
            bold.WriteMiddle(canvas, name, frame.Left, frame.Top - rise, Palette.Spot);
            string where = plain.WidthOf($"on level {level}") <= room ? $"on level {level}" : plain.Fitted(level, room);
            plain.WriteMiddle(canvas, where, end, frame.Top - rise, Palette.SoftInk);
            if (request.Verdicts.FirstOrDefault(verdict => verdict.Spot == spot) is { } found)
            {
                LabelBox lowest = layout.View(column, layout.Levels.Count - 1).Frame;
                double y = lowest.Bottom + ((PlanPlot.BottomFiguresPoints + 8) * pixelsPerPoint);
                bold.WriteMiddle(canvas, bold.Fitted(found.Finding, lowest.Width), lowest.Left, y, Palette.Ink);
                foreach (string line in small.Wrap(found.Detail, lowest.Width, 2))
                {
                    y += DetailLetterPoints * 1.3 * pixelsPerPoint;
                    small.WriteMiddle(canvas, line, lowest.Left, y, Palette.Ink);
                }
            }
        }

        for (int row = 0; row < layout.Levels.Count; row++)
        {
            LabelBox frame = layout.View(0, row).Frame;
            float x = (float)(frame.Left - ((PlanPlot.LeftFiguresPoints + (SheetLayout.SidePoints / 2)) * pixelsPerPoint));
            string name = bold.Fitted(request.House.Levels[layout.Levels[row]].Name, frame.Height);
            canvas.Save();
            canvas.RotateDegrees(-90, x, (float)frame.CentreY);
            bold.WriteMiddle(canvas, name, x, frame.CentreY, Palette.Ink, SKTextAlign.Center);
            canvas.Restore();
        }
    }
}
