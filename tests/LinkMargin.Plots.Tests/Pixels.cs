using LinkMargin.Engine.Geometry;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Tests;

/// <summary>
/// A finished picture, read back a pixel at a time. Where the plan is on it is told from the picture, by the ground about the
/// house, and not from the layout that drew it.
/// </summary>
internal sealed class Pixels
{
    private readonly SKColor[] colours;

    internal Pixels(byte[] png)
    {
        using SKBitmap bitmap = SKBitmap.Decode(png);
        (Width, Height, colours) = (bitmap.Width, bitmap.Height, bitmap.Pixels);
    }

    internal int Width { get; }

    internal int Height { get; }

    internal SKRectI All => new(0, 0, Width, Height);

    internal SKColor this[int x, int y] => colours[(y * Width) + x];

    internal SKColor this[SKPointI at] => this[at.X, at.Y];

    /// <summary>The places in a box of a colour.</summary>
    internal IEnumerable<SKPointI> Where(SKRectI box, Func<SKColor, bool> isIt)
    {
        for (int y = Math.Max(0, box.Top); y < Math.Min(Height, box.Bottom); y++)
        {
            for (int x = Math.Max(0, box.Left); x < Math.Min(Width, box.Right); x++)
            {
                if (isIt(this[x, y]))
                {
                    yield return new SKPointI(x, y);
                }
            }
        }
    }

    internal double Share(SKRectI box, Func<SKColor, bool> isIt) => Where(box, isIt).Count() / (double)(box.Width * box.Height);

    internal double Share(SKRectI box, SKColor colour) => Share(box, c => c == colour);

    /// <summary>The least box that holds some places.</summary>
    internal static SKRectI BoxOf(IEnumerable<SKPointI> places)
    {
        SKPointI[] all = [.. places];
        Assert.NotEmpty(all);
        return new SKRectI(all.Min(p => p.X), all.Min(p => p.Y), all.Max(p => p.X) + 1, all.Max(p => p.Y) + 1);
    }

    /// <summary>Boxes of the patches of a colour of at least so many pixels, each in one piece.</summary>
    internal IReadOnlyList<SKRectI> Patches(SKRectI box, Func<SKColor, bool> isIt, int leastPixels)
    {
        var left = Where(box, isIt).ToHashSet();
        var patches = new List<SKRectI>();
        while (left.Count > 0)
        {
            var patch = new List<SKPointI>();
            var next = new Stack<SKPointI>([left.First()]);
            while (next.TryPop(out SKPointI at))
            {
                if (left.Remove(at))
                {
                    patch.Add(at);
                    next.Push(new(at.X + 1, at.Y));
                    next.Push(new(at.X - 1, at.Y));
                    next.Push(new(at.X, at.Y + 1));
                    next.Push(new(at.X, at.Y - 1));
                }
            }

            if (patch.Count >= leastPixels)
            {
                patches.Add(BoxOf(patch));
            }
        }

        return patches;
    }

    /// <summary>A box about a place.</summary>
    internal static SKRectI About(SKPointI at, int reach) => new(at.X - reach, at.Y - reach, at.X + reach + 1, at.Y + reach + 1);

    /// <summary>Dark as ink or nearly: walls, lines and letters.</summary>
    internal static bool IsDark(SKColor colour) => colour.Red + colour.Green + colour.Blue < 3 * 0x48;

    /// <summary>The only plan of a picture.</summary>
    internal PlanFrameOnPicture Plan(Engine.Houses.House house) => new(Ground(), PlanBounds.Of(house));

    /// <summary>The box of the ground that plans and charts stand on; it shows along all four of its sides.</summary>
    internal SKRectI Ground() => Ground(All);

    /// <summary>The same of the uppermost plans alone: what stands lower on the sheet is apart by more than lettering in a plan.</summary>
    internal SKRectI UpperGround()
    {
        const int MostRowsBetween = 60;
        int[] rows = [.. Where(All, c => c == Palette.Ground).CountBy(at => at.Y).Where(r => r.Value >= 10).Select(r => r.Key).Order()];
        int last = Enumerable.Range(0, rows.Length).First(i => i + 1 == rows.Length || rows[i + 1] - rows[i] > MostRowsBetween);
        return Ground(new SKRectI(0, 0, Width, rows[last] + 1));
    }

    private SKRectI Ground(SKRectI within)
    {
        // A softened edge of a letter may have that colour by chance: rows and columns of ten pixels are the ground.
        SKPointI[] all = [.. Where(within, c => c == Palette.Ground)];
        int[] columns = [.. all.CountBy(at => at.X).Where(c => c.Value >= 10).Select(c => c.Key)];
        int[] rows = [.. all.CountBy(at => at.Y).Where(r => r.Value >= 10).Select(r => r.Key)];
        return new SKRectI(columns.Min(), rows.Min(), columns.Max() + 1, rows.Max() + 1);
    }
}

/// <summary>Where a plan is on a picture.</summary>
internal sealed record PlanFrameOnPicture(SKRectI Frame, PlanBounds Bounds)
{
    internal double PixelsPerMetre => Frame.Width / Bounds.WidthMetres;

    internal SKPointI At(Point2 place) => At(place.X, place.Y);

    internal SKPointI At(double x, double y) => new(
        (int)Math.Floor(Frame.Left + ((x - Bounds.Least.X) * PixelsPerMetre)),
        (int)Math.Floor(Frame.Bottom - ((y - Bounds.Least.Y) * PixelsPerMetre)));

    internal SKRectI Box(double left, double bottom, double right, double top)
    {
        SKPointI low = At(left, bottom), high = At(right, top);
        return new SKRectI(low.X, high.Y, high.X, low.Y);
    }
}
