using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Cli.Options;

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
