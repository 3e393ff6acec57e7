using System.Globalization;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Spots;

/// <summary>The chart: a band for each seat, in it a line for each spot from the margin to count on upwards.</summary>
internal sealed class SpotsChart(LabelBox frame, SpotsRequest request, double pixelsPerPoint)
{
    /// <summary>Height of one spot's line, points.</summary>
    public const double LinePoints = 13;

    /// <summary>Between two seats, points.</summary>
    public const double BetweenPoints = 9;

    private const double NamePoints = 11;
    private const double LetterPoints = 9;
    private const double BarPoints = 5;

    private static readonly SKColor Band = new(0xF3, 0xF2, 0xEE);

    private readonly DecibelAxis axis = MarginAxis.Of(request.Seats);

    /// <summary>Height of a seat's band, points.</summary>
    public static double SeatPoints(SpotsSeat seat) => (Math.Max(seat.Bars.Count, 2) * LinePoints) + BetweenPoints;

    /// <summary>Draws it.</summary>
    public void Draw(SKCanvas canvas)
    {
        double top = frame.Top;
        for (int i = 0; i < request.Seats.Count; i++)
        {
            double height = SeatPoints(request.Seats[i]) * pixelsPerPoint;
            if (i % 2 == 0)
            {
                using SKPaint band = Pen.Fill(Band);
                canvas.DrawRect((float)(frame.Left - NameWidth), (float)top, (float)(frame.Width + NameWidth), (float)height, band);
            }

            top += height;
        }

        DrawAxis(canvas);
        top = frame.Top;
        foreach (SpotsSeat seat in request.Seats)
        {
            double height = SeatPoints(seat) * pixelsPerPoint;
            DrawSeat(canvas, seat, top, height);
            top += height;
        }
    }

    /// <summary>Room for the names of the seats on the left, pixels.</summary>
    public double NameWidth { get; init; }

    private double X(double marginDb) => frame.Left + (axis.Share(marginDb) * frame.Width);

    private void DrawAxis(SKCanvas canvas)
    {
        using SKPaint line = Pen.Line(Palette.FaintInk, 0.5 * pixelsPerPoint);
        using Lettering plain = new(LetterPoints * pixelsPerPoint, isBold: false);
        foreach (double tick in axis.Ticks)
        {
            canvas.DrawLine((float)X(tick), (float)frame.Top, (float)X(tick), (float)(frame.Bottom + (3 * pixelsPerPoint)), line);
            plain.WriteMiddle(
                canvas,
                tick.ToString("0", CultureInfo.InvariantCulture).Replace('-', '−'),
                X(tick),
                frame.Bottom + (9 * pixelsPerPoint),
                Palette.SoftInk,
                SKTextAlign.Center);
        }

        plain.WriteMiddle(canvas, "link margin, dB", frame.CentreX, frame.Bottom + (22 * pixelsPerPoint), Palette.Ink, SKTextAlign.Center);
    }

    private void DrawSeat(SKCanvas canvas, SpotsSeat seat, double top, double height)
    {
        using Lettering bold = new(NamePoints * pixelsPerPoint, isBold: true);
        using Lettering plain = new(LetterPoints * pixelsPerPoint, isBold: false);
        double middle = top + (height / 2), left = frame.Left - NameWidth + (4 * pixelsPerPoint), room = NameWidth - (12 * pixelsPerPoint);
        bold.WriteMiddle(canvas, bold.Fitted(seat.Name, room), left, middle - (6 * pixelsPerPoint), Palette.Ink);
        plain.WriteMiddle(canvas, plain.Fitted(seat.Detail, room), left, middle + (7 * pixelsPerPoint), Palette.SoftInk);

        double y = top + ((height - (seat.Bars.Count * LinePoints * pixelsPerPoint)) / 2) + (LinePoints * pixelsPerPoint / 2);
        foreach (SpotBar bar in seat.Bars)
        {
            DrawBar(canvas, bar, y);
            y += LinePoints * pixelsPerPoint;
        }

        using SKPaint required = Pen.Line(Palette.Ink, 1.6 * pixelsPerPoint);
        double inset = 2 * pixelsPerPoint;
        canvas.DrawLine((float)X(seat.RequiredDb), (float)(top + inset), (float)X(seat.RequiredDb), (float)(top + height - inset), required);
    }

    private void DrawBar(SKCanvas canvas, SpotBar bar, double middle) =>
        SpotSign.Draw(canvas, SpotInk.Of(bar.Spot), X(bar.MarginAtConfidenceDb), X(bar.MedianDb), X(bar.HighDb), middle, BarPoints, pixelsPerPoint, bar.IsMet);
}
