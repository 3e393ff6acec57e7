using System.CommandLine;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Cli.Options;

/// <summary>An option whose value is a length, written as in a house file and independent of the machine's culture.</summary>
internal static class LengthOption
{
    /// <summary>Makes one.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="description">What it is for.</param>
    /// <param name="range">The allowed range, metres.</param>
    public static Option<WrittenLength?> Create(string name, string description, QuantityRange range) => new(name)
    {
        Description = $"{description} Written as in the house file: 4in, 10 cm, or a bare number in the file's unit.",
        HelpName = "LENGTH",
        CustomParser = result => new WrittenLength(name, result.Tokens[0].Value, range),
    };
}

/// <summary>A length as typed. A bare number is in the unit of the house file, which is read later.</summary>
/// <param name="Option">The option it was given to.</param>
/// <param name="Text">What was typed; it is checked once the unit is known.</param>
/// <param name="Range">The allowed range, metres.</param>
internal sealed record WrittenLength(string Option, string Text, QuantityRange Range)
{
    /// <summary>The length in metres; refused if it is not a length or is out of range.</summary>
    /// <param name="bareUnit">The unit of the house file's bare numbers.</param>
    public double Metres(LengthUnit bareUnit)
    {
        var lengths = new LengthFormat(bareUnit);
        Parsed parsed = LengthText.Parse(Text, bareUnit);
        if (parsed.Fault is { } fault)
        {
            throw new CannotBeDoneException($"{Option} {Quote.Of(Text)} {fault}; {lengths.Allowed(Range)} is allowed");
        }

        double metres = parsed.Value;
        return Range.Contains(metres)
            ? metres
            : throw new CannotBeDoneException($"{Option} {Quote.Of(Text)} is {lengths.Show(Range, metres)}, but {lengths.Allowed(Range)} is allowed");
    }
}

/// <summary>Allowed ranges for the lengths of a map.</summary>
internal static class MapLengths
{
    /// <summary>Cell size: below a centimetre nothing more shows, and above 5 m it is no map.</summary>
    public static QuantityRange Cell { get; } = new(0.01, 5, "m");

    /// <summary>Height of the hands: from the floor up to a raised arm.</summary>
    public static QuantityRange Hands { get; } = new(0, 2.5, "m");
}

/// <summary>Allowed ranges for the lengths of a search for places.</summary>
internal static class PlaceLengths
{
    /// <summary>Distance between places: nobody places a console more finely than the lower end.</summary>
    public static QuantityRange Grid { get; } = new(0.05, 2, "m");

    /// <summary>A console's height: from the floor to the highest shelf.</summary>
    public static QuantityRange Height { get; } = new(0, 5, "m");
}
