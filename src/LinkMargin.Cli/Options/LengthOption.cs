using System.CommandLine;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Cli.Options;

/// <summary>An option with a length behind it, written as in a house file and read the same on every machine.</summary>
internal static class LengthOption
{
    /// <summary>Makes one.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="description">What it is for.</param>
    /// <param name="range">What it may be, metres.</param>
    public static Option<WrittenLength?> Create(string name, string description, QuantityRange range) => new(name)
    {
        Description = $"{description} Written as in the house file: 4in, 10 cm, or a bare number in the file's unit.",
        HelpName = "LENGTH",
        CustomParser = result => new WrittenLength(name, result.Tokens[0].Value, range),
    };
}

/// <summary>A length as somebody typed it. A bare number is in the unit of the house file, which is read later.</summary>
/// <param name="Option">The option it was given to.</param>
/// <param name="Text">What was typed; whether it is a length is seen with the unit.</param>
/// <param name="Range">What it may be, metres.</param>
internal sealed record WrittenLength(string Option, string Text, QuantityRange Range)
{
    /// <summary>The length in metres; refused if it is not one or out of range.</summary>
    /// <param name="bareUnit">The unit of the house file's bare numbers.</param>
    public double Metres(LengthUnit bareUnit)
    {
        var lengths = new LengthFormat(bareUnit);
        Parsed parsed = LengthText.Parse(Text, bareUnit);
        if (parsed.Fault is { } fault)
        {
            throw new CannotBeDoneException($"{Option} {Quote.Of(Text)} {fault}; it may be {lengths.Allowed(Range)}");
        }

        double metres = parsed.Value;
        return Range.Contains(metres)
            ? metres
            : throw new CannotBeDoneException($"{Option} {Quote.Of(Text)} is {lengths.Show(Range, metres)}, but may be {lengths.Allowed(Range)}");
    }
}

/// <summary>What the lengths of a map may be.</summary>
internal static class MapLengths
{
    /// <summary>Side of a cell: finer than a centimetre shows nothing more, and coarser than 5 m is no map.</summary>
    public static QuantityRange Cell { get; } = new(0.01, 5, "m");

    /// <summary>Height of the hands: from the floor to as high as an arm reaches.</summary>
    public static QuantityRange Hands { get; } = new(0, 2.5, "m");
}

/// <summary>What the lengths of a search for places may be.</summary>
internal static class PlaceLengths
{
    /// <summary>From one place to the next: finer than a hand's breadth no console is put.</summary>
    public static QuantityRange Grid { get; } = new(0.05, 2, "m");

    /// <summary>A console's height: from the floor to the highest shelf.</summary>
    public static QuantityRange Height { get; } = new(0, 5, "m");
}
