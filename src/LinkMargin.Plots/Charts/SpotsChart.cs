using System.Globalization;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Charts;

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

/// <summary>A margin with its spread: full where it can be counted on, an outline where not.</summary>
internal static class SpotSign
{
    /// <summary>Draws one from the margin to count on to the high one, with a dot at the median.</summary>
    internal static void Draw(
        SKCanvas canvas, SKColor colour, double counted, double median, double high, double middle, double barPoints, double pixelsPerPoint, bool passes)
    {
        double half = barPoints / 2 * pixelsPerPoint;
        var bar = new SKRect((float)counted, (float)(middle - half), (float)Math.Max(high, counted + 1), (float)(middle + half));
        using SKPaint fill = Pen.Fill(passes ? colour : Palette.Paper), rim = Pen.Line(colour, 1.2 * pixelsPerPoint);
        canvas.DrawRect(bar, fill);
        canvas.DrawRect(bar, rim);
        double radius = 3.6 * pixelsPerPoint;
        using SKPaint dot = Pen.Fill(passes ? Palette.Paper : colour);
        canvas.DrawCircle((float)median, (float)middle, (float)radius, dot);
        canvas.DrawCircle((float)median, (float)middle, (float)radius, rim);
    }
}

/// <summary>
/// How spots are told apart: the first, the one to choose, by the strong colour of the sheet, the others by tones that
/// differ in lightness too, so that they part in black and white and for any eye. Their order in each seat's rows, which is
/// that of the key, says the same.
/// </summary>
internal static class SpotInk
{
    private static readonly SKColor[] Tones =
    [
        new(0x8A, 0x1C, 0x3B), new(0x2F, 0x5D, 0x8C), new(0x7A, 0x8F, 0x3A), new(0xB9, 0x7A, 0x2B), new(0x5B, 0x4A, 0x7E),
        new(0x3E, 0x8E, 0x8A),
    ];

    /// <summary>The colour of a spot by its place in the key.</summary>
    internal static SKColor Of(int spot) => Tones[spot % Tones.Length];
}

/// <summary>The margins that seats against spots run over.</summary>
internal static class MarginAxis
{
    private const double LeastSpanDb = 30;
    private const double EdgeDb = 1;
    private const int MostSteps = 12;

    /// <summary>The axis that holds every bar, every required margin and 0, dB.</summary>
    public static DecibelAxis Of(IReadOnlyList<SpotsSeat> seats)
    {
        double[] all = [0, .. seats.SelectMany(seat => seat.Bars.SelectMany(bar => new[] { bar.MarginAtConfidenceDb, bar.HighDb }).Append(seat.RequiredDb))];
        var axis = DecibelAxis.Over(all.Min(), all.Max(), EdgeDb, MostSteps);
        return axis with { Greatest = Math.Max(axis.Greatest, axis.Least + LeastSpanDb) };
    }
}
