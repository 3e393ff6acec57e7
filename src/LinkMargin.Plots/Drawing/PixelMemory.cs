using System.Numerics;
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

    /// <summary>A colour without transparency as a pixel.</summary>
    public static uint Packed(SKColor colour) => colour.Blue | ((uint)colour.Green << 8) | ((uint)colour.Red << 16) | 0xFF000000;

    /// <summary>Takes memory; what is in it is left over from earlier.</summary>
    public PixelMemory(int width, int height)
    {
        info = new SKImageInfo(width, height, ColourOrder, SKAlphaType.Premul);
        memory = SpareMemory.Take(checked(width * height));
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
            SpareMemory.Return(memory);
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

/// <summary>
/// Memory of pictures that are finished, for any thread: pictures that are drawn in parallel move from thread to thread, so a store for each thread would
/// hold several times as much. It is held weakly, so that a program that goes on gets it back.
/// </summary>
internal static class SpareMemory
{
    private static readonly Lock Guard = new();
    private static readonly List<WeakReference<uint[]>> Spare = [];

    /// <summary>Memory for at least so many pixels, with whatever is in it.</summary>
    public static uint[] Take(int count)
    {
        // Few sizes, so that a picture a little larger than the one before finds its memory. What is not used costs nothing.
        int length = (int)BitOperations.RoundUpToPowerOf2((uint)count);
        lock (Guard)
        {
            for (int i = Spare.Count - 1; i >= 0; i--)
            {
                if (!Spare[i].TryGetTarget(out uint[]? memory))
                {
                    Spare.RemoveAt(i);
                }
                else if (memory.Length == length)
                {
                    Spare.RemoveAt(i);
                    return memory;
                }
            }
        }

        return GC.AllocateUninitializedArray<uint>(length);
    }

    /// <summary>Takes memory back.</summary>
    public static void Return(uint[] memory)
    {
        lock (Guard)
        {
            Spare.Add(new WeakReference<uint[]>(memory));
        }
    }
}
