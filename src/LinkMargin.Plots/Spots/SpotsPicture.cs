using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;

namespace LinkMargin.Plots.Spots;

/// <summary>All seats against all spots at a glance: each margin with its spread, and what each seat asks for as a line.</summary>
public static class SpotsPicture
{
    private const double WidthPoints = 620;
    private const double NamePoints = 130;
    private const double AxisPoints = 32;
    private const double KeyGapPoints = 8;

    /// <summary>The size at which every line is easily read.</summary>
    public static PictureSize FittingSize(SpotsRequest request, double pixelsPerPoint = 2.5)
    {
        ArgumentNullException.ThrowIfNull(request);
        int width = (int)Math.Ceiling(WidthPoints * pixelsPerPoint);
        double height = ((request.Seats.Sum(SpotsChart.SeatPoints) + AxisPoints + KeyGapPoints) * pixelsPerPoint)
            + Key(request, BodyWidth(width, pixelsPerPoint), pixelsPerPoint).HeightPixels
            + Page.FurniturePixels(width, pixelsPerPoint, request.Title, request.Caption);
        return new(width, PictureSize.NearestAllowed(height, pixelsPerPoint), pixelsPerPoint);
    }

    /// <summary>Draws it; the bytes are a PNG.</summary>
    public static byte[] Render(SpotsRequest request, PictureSize size)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(size);
        double s = size.PixelsPerPoint, name = NamePoints * s;
        using var page = new Page(size, request.Title, request.Caption);
        LabelBox body = page.Body;
        KeyStrip key = Key(request, body.Width, s);
        key.Draw(page.Canvas, body.Left, body.Top);
        double top = body.Top + key.HeightPixels + (KeyGapPoints * s);
        double bottom = top + (request.Seats.Sum(SpotsChart.SeatPoints) * s);
        new SpotsChart(new(body.Left + name, top, body.Right, bottom), request, s) { NameWidth = name }.Draw(page.Canvas);
        return page.ToPng();
    }

    private static double BodyWidth(int widthPixels, double pixelsPerPoint) => widthPixels - (2 * Page.MarginPoints * pixelsPerPoint);

    private static KeyStrip Key(SpotsRequest request, double widthPixels, double pixelsPerPoint)
    {
        const double BarPoints = 26;
        double s = pixelsPerPoint;
        return new KeyStrip(
            [
                .. request.Spots.Select((spot, i) => new KeyEntry(BarPoints, spot, (canvas, box) =>
                    SpotSign.Draw(canvas, SpotInk.Of(i), box.Left, box.CentreX, box.Right, box.CentreY, 5, s, passes: true))),
                new KeyEntry(BarPoints, "the same, short of what the seat asks for", (canvas, box) =>
                    SpotSign.Draw(canvas, Palette.SoftInk, box.Left, box.CentreX, box.Right, box.CentreY, 5, s, passes: false)),
                new KeyEntry(8, "what the seat asks for", (canvas, box) =>
                {
                    using var line = Pen.Line(Palette.Ink, 1.6 * s);
                    canvas.DrawLine((float)box.CentreX, (float)box.Top, (float)box.CentreX, (float)box.Bottom, line);
                }),
                new KeyEntry(0, $"left end: the margin to count on, {request.Often}; dot: the median; right end: as likely to be passed as the left to be missed", (_, _) => { }),
            ],
            widthPixels,
            pixelsPerPoint);
    }
}
