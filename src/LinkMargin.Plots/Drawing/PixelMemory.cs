using System.Buffers;
using System.Runtime.InteropServices;
using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>
/// The pixels of one picture, row by row from the top. The memory serves the next picture too: the first use of fresh memory takes longer than
/// filling it.
/// </summary>
internal sealed class PixelMemory : IDisposable
{
    /// <summary>The only colour order that the drawing library fills quickly on every platform: blue in the lowest byte.</summary>
    public const SKColorType ColourOrder = SKColorType.Bgra8888;

    private readonly uint[] memory;
    private readonly SKImageInfo info;
    private GCHandle pinned;

    /// <summary>Takes memory; what is in it is left over from earlier.</summary>
    public PixelMemory(int width, int height)
    {
        info = new SKImageInfo(width, height, ColourOrder, SKAlphaType.Premul);
        memory = ArrayPool<uint>.Shared.Rent(checked(width * height));
        pinned = GCHandle.Alloc(memory, GCHandleType.Pinned);
    }

    /// <summary>All pixels.</summary>
    public Span<uint> All => memory.AsSpan(0, info.Width * info.Height);

    /// <summary>The pixels of a row.</summary>
    public Span<uint> Row(int row) => memory.AsSpan(row * info.Width, info.Width);

    /// <summary>A surface that draws on these pixels; null if the library cannot. Dispose it first.</summary>
    public SKSurface? Surface() => SKSurface.Create(info, pinned.AddrOfPinnedObject(), info.RowBytes);

    /// <summary>A picture of these pixels, which takes this memory over: it is free again when nothing holds the picture any more.</summary>
    public SKImage ToImage()
    {
        using var pixels = new SKPixmap(info, pinned.AddrOfPinnedObject(), info.RowBytes);
        return SKImage.FromPixels(pixels, (_, _) => Dispose());
    }

    /// <summary>Frees the memory for the next picture.</summary>
    public void Dispose()
    {
        if (pinned.IsAllocated)
        {
            pinned.Free();
            ArrayPool<uint>.Shared.Return(memory);
        }

        GC.SuppressFinalize(this);
    }

    // Of a picture that failed half-way.
    ~PixelMemory()
    {
        if (pinned.IsAllocated)
        {
            pinned.Free();
        }
    }
}
