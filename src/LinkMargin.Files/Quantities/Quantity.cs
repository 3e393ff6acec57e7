namespace LinkMargin.Files.Quantities;

/// <summary>A kind of number with the units that may follow it; all its units have the same size.</summary>
/// <param name="What">What it is, such as <c>a ratio in dB</c>.</param>
/// <param name="Example">An example of the notation.</param>
/// <param name="Units">The unit words; empty for a bare number.</param>
internal sealed record Quantity(string What, string Example, IReadOnlyList<string> Units)
{
    /// <summary>A number without a unit.</summary>
    public static Quantity Plain { get; } = new("a number", "0.5", []);

    /// <summary>How often something is used.</summary>
    public static Quantity DaysAMonth { get; } = new("a number of days of a month", "12", []);

    /// <summary>A power ratio in dB.</summary>
    public static Quantity Decibels { get; } = new("a figure in dB", "15 or 15 dB", ["dB"]);

    /// <summary>An antenna gain over an isotropic antenna.</summary>
    public static Quantity Gain { get; } = new("a gain in dBi", "-2 or -2 dBi", ["dBi", "dB"]);

    /// <summary>A power level in dBm.</summary>
    public static Quantity LevelDbm { get; } = new("a level in dBm", "-90 or -90 dBm", ["dBm"]);

    /// <summary>An angle in degrees.</summary>
    public static Quantity Degrees { get; } = new("an angle in degrees", "30 or 30 deg", ["deg", "degrees", "degree", "°"]);

    /// <summary>Reads a number with or without one of the units.</summary>
    public Parsed Parse(string text)
    {
        string notThis = $"is not {What}; write {Example}";
        string trimmed = text.Trim();
        int end = trimmed.Length;
        while (end > 0 && (char.IsLetter(trimmed[end - 1]) || trimmed[end - 1] == '°'))
        {
            end--;
        }

        string unit = trimmed[end..];
        if (!trimmed[..end].Any(char.IsAsciiDigit))
        {
            return NumberText.Parse(trimmed, notThis);
        }

        return unit.Length == 0 || Units.Contains(unit, StringComparer.OrdinalIgnoreCase)
            ? NumberText.Parse(trimmed[..end], notThis)
            : Parsed.Wrong($"has the unit '{unit}', but this is {What}; write {Example}");
    }
}

/// <summary>A number read from text, or the fault of the text, worded to follow the quoted text.</summary>
/// <param name="Value">The number; meaningless if there is a fault.</param>
/// <param name="Fault">What is wrong and what to write; null if nothing is.</param>
public readonly record struct Parsed(double Value, string? Fault)
{
    /// <summary>A number.</summary>
    public static Parsed Of(double value) => new(value, null);

    /// <summary>A fault.</summary>
    public static Parsed Wrong(string fault) => new(double.NaN, fault);
}
