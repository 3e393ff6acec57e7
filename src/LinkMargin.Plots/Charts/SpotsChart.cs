using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using ScottPlot;
using SkiaSharp;
using Palette = LinkMargin.Plots.Drawing.Palette;

namespace LinkMargin.Plots.Charts;

/// <summary>The chart: a band for each seat, with a bar for each spot that starts at the margin to count on.</summary>
internal sealed class SpotsChart(LabelBox frame, SpotsRequest request, double pixelsPerPoint)
{
    private const double LinePoints = 13;
    private const double BetweenPoints = 9;
    private const double NamePoints = 11;
    private const double LetterPoints = 9;

    // The axis covers at least this span, with this much space around the bars.
    private const double LeastSpanDb = 30;
    private const double RoomDb = 1;

    // No band is too low for a seat's name and its level.
    private const double LeastBandPoints = 26;

    /// <summary>Height of all bands, points.</summary>
    public static double AllPoints(SpotsRequest request) => request.Seats.Sum(seat => SeatPoints(request, seat));

    private static double SeatPoints(SpotsRequest request, SpotsSeat seat) =>
        Math.Max(LeastBandPoints, request.LineShare * ((Math.Max(seat.Bars.Count, 2) * LinePoints) + BetweenPoints));

    /// <summary>Space for the names of the seats on the left, pixels.</summary>
    public double NameWidth { get; init; }

    /// <summary>Draws the chart.</summary>
    public void Draw(SKCanvas canvas)
    {
        using var plot = new SheetPlot(frame, pixelsPerPoint);
        double height = AllPoints(request);
        (double least, double greatest) = RangeOf(request.Seats);

        // The vertical axis counts points downwards from the first seat, like the page.
        plot.Plot.Axes.SetLimits(least, Math.Max(greatest, least + LeastSpanDb), height, 0);
        plot.Plot.DataBackground.Color = Colors.Transparent;
        plot.StyleDecibels(plot.Plot.Axes.Bottom, "link margin (dB)");
        plot.Plot.Grid.IsVisible = true;
        plot.Plot.Grid.YAxisStyle.IsVisible = false;
        plot.Plot.Grid.XAxisStyle.MajorLineStyle.Color = SheetPlot.ToColor(Palette.FaintInk);
        plot.Plot.Grid.XAxisStyle.MajorLineStyle.Width = (float)Math.Max(1, Math.Round(0.5 * pixelsPerPoint));
        plot.Plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.EmptyTickGenerator();
        foreach (IAxis axis in new IAxis[] { plot.Plot.Axes.Left, plot.Plot.Axes.Bottom, plot.Plot.Axes.Right, plot.Plot.Axes.Top })
        {
            axis.FrameLineStyle.Width = 0;
        }

        double top = 0;
        for (int i = 0; i < request.Seats.Count; i++)
        {
            SpotsSeat seat = request.Seats[i];
            double points = SeatPoints(request, seat);
            DrawName(canvas, seat, frame.Top + (top * pixelsPerPoint), points * pixelsPerPoint, hasBand: i % 2 == 0);
            AddSeat(plot.Plot.Add, seat, top, points);
            top += points;
        }

        plot.Draw(canvas);
    }

    /// <summary>The range of the axis: every bar, every required margin and 0, dB.</summary>
    private static (double Least, double Greatest) RangeOf(IReadOnlyList<SpotsSeat> seats) => SheetPlot.WholeTens(
        [0, .. seats.SelectMany(seat => seat.Bars.SelectMany(bar => new[] { bar.MarginAtConfidenceDb, bar.HighDb }).Append(seat.RequiredDb))], RoomDb);

    private void AddSeat(PlottableAdder add, SpotsSeat seat, double top, double points)
    {
        double line = request.LineShare * LinePoints, middle = top + ((points - (seat.Bars.Count * line)) / 2) + (line / 2);
        foreach (SpotBar bar in seat.Bars)
        {
            ScottPlot.Plottables.BarPlot drawn = add.Bar(SpotSign.Bar(bar, middle, pixelsPerPoint));
            drawn.Horizontal = true;
            add.Scatter(bar.MedianDb, middle).MarkerStyle = SpotSign.Median(SpotInk.Of(bar.Spot), bar.Passes, pixelsPerPoint);
            middle += line;
        }

        const double Inset = 2;
        ScottPlot.Plottables.LinePlot required = add.Line(seat.RequiredDb, top + Inset, seat.RequiredDb, top + points - Inset);
        required.LineColor = SheetPlot.ToColor(Palette.Ink);
        required.LineWidth = (float)(1.6 * pixelsPerPoint);
        required.MarkerSize = 0;
    }

    // Two lines of different weight, over a band that extends below the chart: no axis of the library can do that.
    private void DrawName(SKCanvas canvas, SpotsSeat seat, double top, double height, bool hasBand)
    {
        if (hasBand)
        {
            using SKPaint band = Pen.Fill(Palette.Ground);
            canvas.DrawRect((float)(frame.Left - NameWidth), (float)top, (float)(frame.Width + NameWidth), (float)height, band);
        }

        using Lettering bold = new(NamePoints * pixelsPerPoint, isBold: true);
        using Lettering plain = new(LetterPoints * pixelsPerPoint, isBold: false);
        double middle = top + (height / 2), left = frame.Left - NameWidth + (4 * pixelsPerPoint), room = NameWidth - (12 * pixelsPerPoint);
        bold.WriteMiddle(canvas, bold.Fitted(seat.Name, room), left, middle - (6 * pixelsPerPoint), Palette.Ink);
        plain.WriteMiddle(canvas, plain.Fitted(seat.Detail, room), left, middle + (7 * pixelsPerPoint), Palette.SoftInk);
    }
}

/// <summary>A margin with its spread: filled if the seat passes, otherwise an outline; with a dot at the median.</summary>
internal static class SpotSign
{
    private const double BarPoints = 5;
    private const double RimPoints = 1.2;
    private const double DotPoints = 7.2;

    /// <summary>The bar from the margin to count on to the high margin.</summary>
    public static Bar Bar(SpotBar bar, double middle, double pixelsPerPoint)
    {
        Color colour = SheetPlot.ToColor(SpotInk.Of(bar.Spot));
        return new Bar
        {
            Position = middle,
            ValueBase = bar.MarginAtConfidenceDb,
            Value = bar.HighDb,
            Size = BarPoints,
            FillColor = bar.Passes ? colour : SheetPlot.ToColor(Palette.Paper),
            LineColor = colour,
            LineWidth = (float)(RimPoints * pixelsPerPoint),
        };
    }

    /// <summary>The dot at the median.</summary>
    public static MarkerStyle Median(SKColor colour, bool passes, double pixelsPerPoint) =>
        new(MarkerShape.FilledCircle, (float)(DotPoints * pixelsPerPoint), SheetPlot.ToColor(passes ? Palette.Paper : colour))
        {
            OutlineColor = SheetPlot.ToColor(colour),
            OutlineWidth = (float)(RimPoints * pixelsPerPoint),
        };

    /// <summary>Draws a sample of both for a key.</summary>
    public static void DrawSample(SKCanvas canvas, LabelBox box, SKColor colour, bool passes, double pixelsPerPoint)
    {
        double half = BarPoints / 2 * pixelsPerPoint;
        var bar = new SKRect((float)box.Left, (float)(box.CentreY - half), (float)box.Right, (float)(box.CentreY + half));
        using SKPaint fill = Pen.Fill(passes ? colour : Palette.Paper), rim = Pen.Line(colour, RimPoints * pixelsPerPoint);
        canvas.DrawRect(bar, fill);
        canvas.DrawRect(bar, rim);
        using Paint paint = Paint.NewDisposablePaint();
        Median(colour, passes, pixelsPerPoint).Render(canvas, new Pixel((float)box.CentreX, (float)box.CentreY), paint);
    }
}

/// <summary>
/// Colours of spots: the first, the one to choose, has the strong colour of the sheet; the others have tones that also differ in
/// lightness, so that they can be distinguished in black and white and with colour blindness. They are also identified by their
/// order in each seat's rows, which is that of the key.
/// </summary>
internal static class SpotInk
{
    private static readonly SKColor[] Tones =
    [
        new(0x8A, 0x1C, 0x3B), new(0x2F, 0x5D, 0x8C), new(0x7A, 0x8F, 0x3A), new(0xB9, 0x7A, 0x2B), new(0x5B, 0x4A, 0x7E),
        new(0x3E, 0x8E, 0x8A),
    ];

    /// <summary>The colour of a spot by its position in the key.</summary>
    internal static SKColor Of(int spot) => Tones[spot % Tones.Length];
}
