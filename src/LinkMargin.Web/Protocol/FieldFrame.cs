using System.Buffers.Binary;
using LinkMargin.Engine.Fields;

namespace LinkMargin.Web.Protocol;

/// <summary>
/// One level's field as bytes, little-endian: the letters LMF1, generation, version, level, flags, columns, rows (32 bits each), then the grid's
/// origin and cell size in metres (64 bits each), medians and margins to count on (32 bits each; NaN where not computed). Rows run south to north.
/// </summary>
internal static class FieldFrame
{
    /// <summary>Bytes before the figures.</summary>
    public const int HeaderBytes = 52;

    /// <summary>The field is at its final resolution.</summary>
    public const int IsFine = 1;

    /// <summary>This is the last level of its set.</summary>
    public const int IsLast = 2;

    /// <summary>Writes a frame.</summary>
    /// <param name="generation">The request it answers.</param>
    /// <param name="version">The house it was computed with.</param>
    /// <param name="flags"><see cref="IsFine"/>, <see cref="IsLast"/>.</param>
    /// <param name="median">The medians.</param>
    /// <param name="countOn">The margins to count on, over the same grid.</param>
    public static byte[] Of(int generation, int version, int flags, Field median, Field countOn)
    {
        Grid grid = median.Grid;
        byte[] bytes = new byte[HeaderBytes + (2 * sizeof(float) * grid.Count)];
        Span<byte> at = bytes;
        "LMF1"u8.CopyTo(at);
        int[] head = [generation, version, median.LevelIndex, flags, grid.Columns, grid.Rows];
        for (int i = 0; i < head.Length; i++)
        {
            BinaryPrimitives.WriteInt32LittleEndian(at[(4 + (4 * i))..], head[i]);
        }

        double[] place = [grid.Origin.X, grid.Origin.Y, grid.CellMetres];
        for (int i = 0; i < place.Length; i++)
        {
            BinaryPrimitives.WriteDoubleLittleEndian(at[(28 + (8 * i))..], place[i]);
        }

        for (int i = 0; i < grid.Count; i++)
        {
            BinaryPrimitives.WriteSingleLittleEndian(at[(HeaderBytes + (4 * i))..], (float)median.MarginDb[i]);
            BinaryPrimitives.WriteSingleLittleEndian(at[(HeaderBytes + (4 * (grid.Count + i)))..], (float)countOn.MarginDb[i]);
        }

        return bytes;
    }
}
