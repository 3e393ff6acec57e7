using LinkMargin.Files.Quantities;

namespace LinkMargin.Cli.Options;

/// <summary>A length as somebody typed it. A bare number is in the unit of the house file, which is read later.</summary>
/// <param name="Option">The option it was given to.</param>
/// <param name="Text">What was typed; known to be a length.</param>
/// <param name="Range">What it may be, metres.</param>
internal sealed record WrittenLength(string Option, string Text, QuantityRange Range)
{
    /// <summary>The length in metres; refused where it is out of range.</summary>
    /// <param name="bareUnit">The unit of the house file's bare numbers.</param>
    public double Metres(LengthUnit bareUnit)
    {
        double metres = LengthText.Parse(Text, bareUnit).Value;
        return Range.Contains(metres)
            ? metres
            : throw new CannotBeDoneException($"{Option} '{Text}' is {Range.Show(metres)}, but may be {Range}");
    }
}
