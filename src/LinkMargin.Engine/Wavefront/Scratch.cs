using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// Memory for the numbers of one computation, returned when it ends and reused by the next on the same thread, so that hot loops
/// allocate nothing. It is not cleared. Always opened with <c>using</c>.
/// </summary>
internal readonly ref struct Scratch : IDisposable
{
    private const int FirstSize = 2048;

    [ThreadStatic]
    private static Room? ofThread;

    private readonly Room room;
    private readonly int usedBefore;

    private Scratch(Room room)
    {
        this.room = room;
        usedBefore = room.Used;
    }

    /// <summary>Opens a scratch within those that are open on this thread.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Scratch Open() => new(ofThread ??= new Room());

    /// <summary>Gives out memory for a number of values.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Span<T> Of<T>(int count)
        where T : unmanaged
    {
        int size = (int)(((uint)(count * Unsafe.SizeOf<T>()) + sizeof(double) - 1) / sizeof(double));
        if (room.Numbers.Length - room.Used < size)
        {
            room.Grow(size);
        }

        Span<double> numbers = room.Numbers.AsSpan(room.Used, size);
        room.Used += size;
        return MemoryMarshal.Cast<double, T>(numbers)[..count];
    }

    /// <summary>Returns everything.</summary>
    public void Dispose() => room.Used = usedBefore;

    private sealed class Room
    {
        internal double[] Numbers = new double[FirstSize];
        internal int Used;

        // What was given out before stays in the old array.
        [MethodImpl(MethodImplOptions.NoInlining)]
        internal void Grow(int size) => Numbers = new double[2 * (Used + size)];
    }
}
