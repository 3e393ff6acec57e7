using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Contours;

/// <summary>A surface's tones, one per pixel of the frame; transparent outside the surface.</summary>
internal sealed class FieldRaster
{
    // The tone where there is no surface.
    private const int Nothing = -1;

    private readonly FieldSurface surface;
    private readonly MarginColours colours;
    private readonly PlanView view;
    private readonly uint[] packed; // by tone
    private readonly double[] places; // of each column of pixels, in columns of nodes
    private readonly int[] firsts;

    // Abreast of a row of pixels, at each column of nodes.
    private readonly double[] margins;
    private readonly double[] hatchMargins;
    private readonly int[] tones;

    public FieldRaster(FieldSurface surface, MarginColours colours, PlanView view)
    {
        (this.surface, this.colours, this.view) = (surface, colours, view);
        Rows = (int)Math.Round(view.Frame.Height);
        packed = [.. colours.Tones.Select(PixelMemory.Packed)];
        places = [.. Enumerable.Range(0, (int)Math.Round(view.Frame.Width)).Select(column => surface.ColumnAt(view.MetresX(view.Frame.Left + column + 0.5)))];
        firsts = FirstPixels(places, surface.Columns);
        (margins, hatchMargins, tones) = (new double[surface.Columns], new double[surface.Columns], new int[surface.Columns]);
        Hatched = surface;
    }

    /// <summary>Rows of pixels.</summary>
    public int Rows { get; }

    /// <summary>The hatching; null for none.</summary>
    public HatchTones? Hatch { get; init; }

    /// <summary>The surface that is hatched where it is below <see cref="RequiredDb"/>, on the same grid.</summary>
    public FieldSurface Hatched { get; init; }

    /// <summary>The margin below which the ground is hatched.</summary>
    public double RequiredDb { get; init; }

    /// <summary>The picture of some rows.</summary>
    public SKImage Image(int firstRow, int rows)
    {
        var pixels = new PixelMemory(places.Length, rows);
        for (int row = 0; row < rows; row++)
        {
            Fill(pixels.Row(row), firstRow + row);
        }

        return pixels.ToImage();
    }

    private void Fill(Span<uint> line, int row)
    {
        double y = view.MetresY(view.Frame.Top + row + 0.5);
        surface.AbreastOf(y, margins);
        double[] below = Hatched == surface ? margins : hatchMargins;
        if (below == hatchMargins)
        {
            Hatched.AbreastOf(y, hatchMargins);
        }

        for (int node = 0; node < tones.Length; node++)
        {
            tones[node] = double.IsNaN(margins[node]) ? Nothing : colours.ToneOf(margins[node]);
        }

        line[..firsts[0]].Clear();
        line[firsts[^1]..].Clear();
        for (int west = 0; west + 1 < tones.Length; west++)
        {
            (int from, int to) = (firsts[west], firsts[west + 1]);
            if (tones[west] == Nothing || tones[west + 1] == Nothing)
            {
                line[from..to].Clear(); // transparent
                continue;
            }

            (int hatchFrom, int hatchTo) = Hatch is null ? (to, to) : PixelsBelow(below, west);
            if (tones[west] == tones[west + 1])
            {
                // Between two nodes of one tone there is no other.
                line[from..to].Fill(packed[tones[west]]);
                Hatch?.Of(tones[west], row).Slice(hatchFrom, hatchTo - hatchFrom).CopyTo(line[hatchFrom..]);
                continue;
            }

            for (int column = from; column < to; column++)
            {
                int tone = colours.ToneOf(Between(margins, west, column));
                line[column] = column >= hatchFrom && column < hatchTo ? Hatch!.Of(tone, row)[column] : packed[tone];
            }
        }
    }

    // The pixels between two nodes where a margin is below the required one.
    private (int From, int To) PixelsBelow(double[] marginDb, int west)
    {
        (int from, int to) = (firsts[west], firsts[west + 1]);
        bool isWest = marginDb[west] < RequiredDb, isEast = marginDb[west + 1] < RequiredDb;
        if (isWest == isEast)
        {
            return (isWest ? from : to, to);
        }

        int border = from;
        while (border < to && Between(marginDb, west, border) < RequiredDb == isWest)
        {
            border++;
        }

        return isWest ? (from, border) : (border, to);
    }

    private double Between(double[] marginDb, int west, int column) =>
        marginDb[west] + ((places[column] - west) * (marginDb[west + 1] - marginDb[west]));

    // The first pixel east of each node; after the last node, the first beyond the surface.
    private static int[] FirstPixels(double[] places, int nodes)
    {
        int[] firsts = new int[nodes];
        for (int node = 0, column = 0; node < nodes; node++)
        {
            while (column < places.Length && (node < nodes - 1 ? places[column] < node : places[column] <= node))
            {
                column++;
            }

            firsts[node] = column;
        }

        return firsts;
    }
}
