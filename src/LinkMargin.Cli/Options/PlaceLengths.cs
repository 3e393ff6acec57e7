using LinkMargin.Files.Quantities;

namespace LinkMargin.Cli.Options;

/// <summary>What the lengths of a search for places may be.</summary>
internal static class PlaceLengths
{
    /// <summary>From one place to the next: finer than a hand's breadth no console is put.</summary>
    public static QuantityRange Grid { get; } = new(0.05, 2, "m");

    /// <summary>A console's height: from the floor to the highest shelf.</summary>
    public static QuantityRange Height { get; } = new(0, 5, "m");
}
