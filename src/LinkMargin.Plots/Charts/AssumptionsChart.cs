using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using ScottPlot;
using SkiaSharp;
using Palette = LinkMargin.Plots.Drawing.Palette;

namespace LinkMargin.Plots.Charts;

/// <summary>The chart: a band for each assumption, with a bar from the margin with one alternative to that with the other.</summary>
internal sealed class AssumptionsChart(LabelBox frame, AssumptionsRequest request, double pixelsPerPoint)
{
    /// <summary>Height of an assumption's band, points.</summary>
    public const double BandPoints = 46;

    private const double NamePoints = 10.5;
    private const double LetterPoints = 9;
    private const double LinePoints = 11;
    private const double BarPoints = 7;

    // Lines of a description: beside the bars, and at the end of a bar, where a line may follow that says what else changes.
    private const int MostLines = 2, MostAtEnd = 3;

    // The axis covers at least this span, with this much space around the bars for the text at their ends.
    private const double LeastSpanDb = 20;
    private const double RoomDb = 10;

    /// <summary>Space for the assumptions on the left, pixels.</summary>
    public double NameWidth { get; init; }

    /// <summary>Draws the chart.</summary>
    public void Draw(SKCanvas canvas)
    {
        using var plot = new SheetPlot(frame, pixelsPerPoint);
        (double least, double greatest) = SheetPlot.WholeTens(
            [request.MarginDb, request.RequiredDb, .. request.Rows.SelectMany(row => row.Ends.Select(end => end.MarginDb))], RoomDb);

        // The vertical axis counts points downwards from the first band, like the page.
        plot.Plot.Axes.SetLimits(least, Math.Max(greatest, least + LeastSpanDb), request.Rows.Count * BandPoints, 0);
        plot.Plot.DataBackground.Color = Colors.Transparent;
        plot.StyleDecibels(plot.Plot.Axes.Bottom, request.AxisName);
        plot.Plot.Grid.IsVisible = true;
        plot.Plot.Grid.YAxisStyle.IsVisible = false;
        plot.Plot.Grid.XAxisStyle.MajorLineStyle.Color = SheetPlot.ToColor(Palette.FaintInk);
        plot.Plot.Grid.XAxisStyle.MajorLineStyle.Width = (float)Math.Max(1, Math.Round(0.5 * pixelsPerPoint));
        plot.Plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.EmptyTickGenerator();
        foreach (IAxis axis in new IAxis[] { plot.Plot.Axes.Left, plot.Plot.Axes.Bottom, plot.Plot.Axes.Right, plot.Plot.Axes.Top })
        {
            axis.FrameLineStyle.Width = 0;
        }

        for (int i = 0; i < request.Rows.Count; i++)
        {
            DrawName(canvas, request.Rows[i], frame.Top + (i * BandPoints * pixelsPerPoint), hasBand: i % 2 == 0);
        }

        AddLine(plot.Plot.Add, request.RequiredDb, 1.6);
        AddLine(plot.Plot.Add, request.MarginDb, 0.8);
        plot.Draw(canvas);
        for (int i = 0; i < request.Rows.Count; i++)
        {
            DrawBar(canvas, plot, request.Rows[i], frame.Top + ((i + 0.5) * BandPoints * pixelsPerPoint), i % 2 == 0 ? Palette.Ground : Palette.Paper);
        }
    }

    private void AddLine(PlottableAdder add, double db, double points)
    {
        ScottPlot.Plottables.LinePlot line = add.Line(db, 0, db, request.Rows.Count * BandPoints);
        line.LineColor = SheetPlot.ToColor(Palette.Ink);
        line.LineWidth = (float)(points * pixelsPerPoint);
        line.MarkerSize = 0;
    }

    private void DrawBar(SKCanvas canvas, SheetPlot plot, AssumptionRow row, double middle, SKColor ground)
    {
        double half = BarPoints / 2 * pixelsPerPoint, from = plot.PixelX(request.MarginDb);
        using SKPaint fill = Pen.Fill(Palette.QuietInk), rim = Pen.Line(Palette.Ink, 0.9 * pixelsPerPoint), paper = Pen.Fill(Palette.Paper);
        using SKPaint spread = Pen.Line(Palette.SoftInk, 0.9 * pixelsPerPoint);
        using var letters = new Lettering(LetterPoints * pixelsPerPoint, isBold: false);
        using var strong = new Lettering(LetterPoints * pixelsPerPoint, isBold: true);

        // Of two alternatives on one side, the longer bar is drawn first and the shorter one on top.
        foreach (AssumptionEnd end in row.Ends.OrderByDescending(end => Math.Abs(end.MarginDb - request.MarginDb)))
        {
            double to = plot.PixelX(end.MarginDb);
            var bar = new SKRect((float)Math.Min(from, to), (float)(middle - half), (float)Math.Max(from, to), (float)(middle + half));
            canvas.DrawRect(bar, end.MarginDb >= request.RequiredDb ? fill : paper);
            canvas.DrawRect(bar, rim);
        }

        if (row.SpreadDb > 0)
        {
            float low = (float)plot.PixelX(request.MarginDb - row.SpreadDb), high = (float)plot.PixelX(request.MarginDb + row.SpreadDb);
            float y = (float)(middle + half + (3.5 * pixelsPerPoint)), tick = (float)(1.8 * pixelsPerPoint);
            canvas.DrawLine(low, y, high, y, spread);
            canvas.DrawLine(low, y - tick, low, y + tick, spread);
            canvas.DrawLine(high, y - tick, high, y + tick, spread);
        }

        foreach (IGrouping<bool, AssumptionEnd> side in row.Ends.GroupBy(end => end.MarginDb < request.MarginDb))
        {
            // Two alternatives on one side are written at the end of the longer bar, in their order from the middle.
            AssumptionEnd[] outwards = [.. side.OrderBy(end => Math.Abs(end.MarginDb - request.MarginDb))];
            string[] then = [.. outwards.Select(end => end.Then).Where(text => text.Length > 0).Distinct()];
            double gap = 4 * pixelsPerPoint, x = plot.PixelX(outwards[^1].MarginDb) + (side.Key ? -gap : gap), room = side.Key ? x - frame.Left : frame.Right - x;
            SKTextAlign align = side.Key ? SKTextAlign.Right : SKTextAlign.Left;
            IReadOnlyList<string> lines = letters.Wrap(string.Join("; then ", outwards.Select(end => end.Name)), room, MostAtEnd - Math.Min(1, then.Length));
            double line = LinePoints * pixelsPerPoint, y = middle - ((lines.Count + Math.Min(1, then.Length) - 1) / 2.0 * line);
            foreach (string text in lines)
            {
                Write(letters, text, Palette.Ink);
            }

            if (then.Length > 0)
            {
                Write(strong, strong.Fitted(string.Join("; ", then), room), Palette.Spot);
            }

            void Write(Lettering with, string text, SKColor ink)
            {
                with.WriteMiddleRimmed(canvas, text, x, y, ink, ground, 1.5 * pixelsPerPoint, align);
                y += line;
            }
        }
    }

    private void DrawName(SKCanvas canvas, AssumptionRow row, double top, bool hasBand)
    {
        if (hasBand)
        {
            using SKPaint band = Pen.Fill(Palette.Ground);
            canvas.DrawRect((float)(frame.Left - NameWidth), (float)top, (float)(frame.Width + NameWidth), (float)(BandPoints * pixelsPerPoint), band);
        }

        using Lettering bold = new(NamePoints * pixelsPerPoint, isBold: true);
        using Lettering plain = new(LetterPoints * pixelsPerPoint, isBold: false);
        double middle = top + (BandPoints / 2 * pixelsPerPoint), left = frame.Left - NameWidth + (4 * pixelsPerPoint), room = NameWidth - (12 * pixelsPerPoint);
        IReadOnlyList<string> lines = plain.Wrap(row.Assumed, room, MostLines);
        double line = LinePoints * pixelsPerPoint, y = middle - (lines.Count / 2.0 * line);
        bold.WriteMiddle(canvas, bold.Fitted(row.Name, room), left, y - pixelsPerPoint, Palette.Ink);
        foreach (string text in lines)
        {
            plain.WriteMiddle(canvas, text, left, y += line, Palette.SoftInk);
        }
    }
}
