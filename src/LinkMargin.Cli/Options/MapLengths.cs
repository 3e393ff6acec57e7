using LinkMargin.Files.Quantities;

namespace LinkMargin.Cli.Options;

/// <summary>What the lengths of a map may be.</summary>
internal static class MapLengths
{
    /// <summary>Side of a cell: finer than a centimetre shows nothing more, and coarser than 5 m is no map.</summary>
    public static QuantityRange Cell { get; } = new(0.01, 5, "m");

    /// <summary>Height of the hands: from the floor to as high as an arm reaches.</summary>
    public static QuantityRange Hands { get; } = new(0, 2.5, "m");
}
