namespace LinkMargin.Files.Quantities;

/// <summary>A number read from text, or what is wrong with the text, worded to follow the quoted text.</summary>
/// <param name="Value">The number; without meaning where there is a fault.</param>
/// <param name="Fault">What is wrong and what to write; null where nothing is.</param>
public readonly record struct Parsed(double Value, string? Fault)
{
    /// <summary>A number.</summary>
    public static Parsed Of(double value) => new(value, null);

    /// <summary>A fault.</summary>
    public static Parsed Wrong(string fault) => new(double.NaN, fault);
}
