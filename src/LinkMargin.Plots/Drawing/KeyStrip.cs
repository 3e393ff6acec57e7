using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>Symbols and their meanings in rows, as many per row as fit.</summary>
internal sealed class KeyStrip
{
    private const double SizePoints = 9;
    private const double RowPoints = 15;
    private const double SignPoints = 9;
    private const double GapPoints = 4;
    private const double BetweenPoints = 16;

    private readonly IReadOnlyList<KeyEntry> entries;
    private readonly double pixelsPerPoint;
    private readonly List<(double X, int Row)> places = [];

    /// <summary>Lays out a key.</summary>
    /// <param name="entries">The symbols.</param>
    /// <param name="widthPixels">The greatest width.</param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point.</param>
    /// <param name="inColumns">Whether entries are aligned in columns, all as wide as the widest.</param>
    public KeyStrip(IReadOnlyList<KeyEntry> entries, double widthPixels, double pixelsPerPoint, bool inColumns = false)
    {
        this.pixelsPerPoint = pixelsPerPoint;
        using var lettering = new Lettering(SizePoints * pixelsPerPoint, isBold: false);

        // A very long name must not extend past the sheet.
        this.entries = entries = [.. entries.Select(e => e with { Text = lettering.Fitted(e.Text, widthPixels - TextOffset(e)) })];
        double x = 0;
        int row = 0;
        double[] widths = [.. entries.Select(e => TextOffset(e) + lettering.WidthOf(e.Text))];
        double widest = inColumns ? widths.DefaultIfEmpty(0).Max() : 0;
        foreach (double own in widths)
        {
            double width = Math.Max(own, widest);
            if (x > 0 && x + width > widthPixels)
            {
                (x, row) = (0, row + 1);
            }

            places.Add((x, row));
            WidestPixels = Math.Max(WidestPixels, x + own);
            x += width + (BetweenPoints * pixelsPerPoint);
        }

        HeightPixels = entries.Count == 0 ? 0 : (row + 1) * RowPoints * pixelsPerPoint;
    }

    public double HeightPixels { get; }

    /// <summary>From its left side to the end of the entry that extends furthest.</summary>
    public double WidestPixels { get; }

    public void Draw(SKCanvas canvas, double left, double top)
    {
        using var lettering = new Lettering(SizePoints * pixelsPerPoint, isBold: false);
        foreach ((KeyEntry entry, (double x, int row)) in entries.Zip(places))
        {
            double middle = top + ((row + 0.5) * RowPoints * pixelsPerPoint);
            double half = SignPoints / 2 * pixelsPerPoint, width = entry.SamplePoints * pixelsPerPoint;
            entry.DrawSample(canvas, new(left + x, middle - half, left + x + width, middle + half));
            lettering.WriteMiddle(canvas, entry.Text, left + x + TextOffset(entry), middle, Palette.Ink);
        }
    }

    private double TextOffset(KeyEntry entry) => entry.SamplePoints > 0 ? (entry.SamplePoints + GapPoints) * pixelsPerPoint : 0;
}

/// <summary>One symbol and its meaning.</summary>
/// <param name="SamplePoints">Width of the symbol, points; 0 for a note without one.</param>
/// <param name="Text">Its meaning.</param>
/// <param name="DrawSample">Draws the symbol in a box.</param>
internal sealed record KeyEntry(double SamplePoints, string Text, Action<SKCanvas, LabelBox> DrawSample);
