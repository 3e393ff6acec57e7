using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;

namespace LinkMargin.Plots.Charts;

/// <summary>An overview of all seats and spots: each margin with its spread, and each seat's required margin as a line.</summary>
public static class SpotsPicture
{
    private const double WidthPoints = 620;
    private const double NamePoints = 130;
    private const double AxisPoints = 32;
    private const double KeyGapPoints = 8;

    // Half the width of the last number on the axis; a PNG has a margin for that.
    private const double RightPoints = 12;

    /// <summary>The size at which every line is easy to read.</summary>
    public static PictureSize FittingSize(SpotsRequest request, double pixelsPerPoint = 2.5)
    {
        ArgumentNullException.ThrowIfNull(request);
        int width = (int)Math.Ceiling(WidthPoints * pixelsPerPoint);
        double height = ((SpotsChart.AllPoints(request) + AxisPoints + KeyGapPoints) * pixelsPerPoint)
            + Key(request, BodyWidth(width, pixelsPerPoint), pixelsPerPoint).HeightPixels
            + Page.FurniturePixels(width, pixelsPerPoint, request.Title, request.Caption);
        return new(width, PictureSize.NearestAllowed(height, pixelsPerPoint), pixelsPerPoint);
    }

    /// <summary>Draws a PNG.</summary>
    public static byte[] Render(SpotsRequest request, PictureSize size)
    {
        using Page page = Drawn(request, size, isVector: false);
        return page.ToPng();
    }

    /// <summary>Draws the same as vector graphics.</summary>
    public static VectorPicture Vector(SpotsRequest request, PictureSize size)
    {
        using Page page = Drawn(request, size, isVector: true);
        return page.ToVector();
    }

    private static Page Drawn(SpotsRequest request, PictureSize size, bool isVector)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(size);
        double s = size.PixelsPerPoint, name = NamePoints * s;
        var page = new Page(size, request.Title, request.Caption, isVector);
        LabelBox body = page.Body;
        KeyStrip key = Key(request, body.Width, s);
        key.Draw(page.Canvas, body.Left, body.Top);
        double top = body.Top + key.HeightPixels + (KeyGapPoints * s);
        double bottom = top + (SpotsChart.AllPoints(request) * s);
        new SpotsChart(new(body.Left + name, top, body.Right - (isVector ? RightPoints * s : 0), bottom), request, s) { NameWidth = name }.Draw(page.Canvas);
        return page;
    }

    private static double BodyWidth(int widthPixels, double pixelsPerPoint) => widthPixels - (2 * Page.MarginPoints * pixelsPerPoint);

    private static KeyStrip Key(SpotsRequest request, double widthPixels, double pixelsPerPoint)
    {
        const double BarPoints = 26;
        double s = pixelsPerPoint;
        return new KeyStrip(
            [
                .. request.Spots.Select((spot, i) => new KeyEntry(
                    BarPoints, spot, (canvas, box) => SpotSign.DrawSample(canvas, box, SpotInk.Of(i), passes: true, s))),
                new KeyEntry(
                    BarPoints, "hollow: below the required margin", (canvas, box) => SpotSign.DrawSample(canvas, box, Palette.SoftInk, passes: false, s)),
                new KeyEntry(8, "required margin", (canvas, box) =>
                {
                    using var line = Pen.Line(Palette.Ink, 1.6 * s);
                    canvas.DrawLine((float)box.CentreX, (float)box.Top, (float)box.CentreX, (float)box.Bottom, line);
                }),
                new KeyEntry(
                    0, $"left end: margin to count on, {request.Reached}; dot: median; right end: exceeded as rarely as the left end is missed", (_, _) => { }),
            ],
            widthPixels,
            pixelsPerPoint);
    }
}

/// <summary>What a picture of seats and spots shows.</summary>
/// <param name="Title">Text above it.</param>
/// <param name="Caption">Text below it.</param>
/// <param name="Spots">The spots, best first, as named in the key.</param>
/// <param name="Seats">The seats, top to bottom.</param>
public sealed record SpotsRequest(string Title, string Caption, IReadOnlyList<string> Spots, IReadOnlyList<SpotsSeat> Seats)
{
    /// <summary>The confidence of the margin to count on, in words.</summary>
    public required string Reached { get; init; }

    /// <summary>How far apart bars are, as a share of the distance in a picture that is read by itself.</summary>
    public double LineShare { get; init; } = 1;
}

/// <summary>One seat in a picture of seats and spots.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Detail">Its level and similar details, in a few words.</param>
/// <param name="RequiredDb">Its required margin, dB.</param>
/// <param name="Bars">Its margins, one for each spot it plays at.</param>
public sealed record SpotsSeat(string Name, string Detail, double RequiredDb, IReadOnlyList<SpotBar> Bars);

/// <summary>One seat's margin with one spot.</summary>
/// <param name="Spot">The spot's index in the request's list.</param>
/// <param name="MarginAtConfidenceDb">The margin to count on, dB.</param>
/// <param name="MedianDb">The median margin, dB.</param>
/// <param name="HighDb">The margin that is exceeded as rarely as the margin to count on is missed, dB.</param>
/// <param name="Passes">Whether the margin to count on reaches the required margin.</param>
public sealed record SpotBar(int Spot, double MarginAtConfidenceDb, double MedianDb, double HighDb, bool Passes);
