using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>Signs and their meanings in rows, as many in a row as fit.</summary>
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

    public KeyStrip(IReadOnlyList<KeyEntry> entries, double widthPixels, double pixelsPerPoint)
    {
        (this.entries, this.pixelsPerPoint) = (entries, pixelsPerPoint);
        using var lettering = new Lettering(SizePoints * pixelsPerPoint, isBold: false);
        double x = 0;
        int row = 0;
        foreach (KeyEntry entry in entries)
        {
            double width = TextOffset(entry) + lettering.WidthOf(entry.Text);
            if (x > 0 && x + width > widthPixels)
            {
                (x, row) = (0, row + 1);
            }

            places.Add((x, row));
            x += width + (BetweenPoints * pixelsPerPoint);
        }

        HeightPixels = entries.Count == 0 ? 0 : (row + 1) * RowPoints * pixelsPerPoint;
    }

    public double HeightPixels { get; }

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
