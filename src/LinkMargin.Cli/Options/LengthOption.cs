using System.CommandLine;
using System.CommandLine.Parsing;
using LinkMargin.Files.Quantities;

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
        CustomParser = result => Read(name, result, range),
    };

    private static WrittenLength? Read(string name, ArgumentResult result, QuantityRange range)
    {
        string text = result.Tokens[0].Value;
        if (LengthText.Parse(text, LengthUnit.Metre).Fault is not { } fault)
        {
            return new WrittenLength(name, text, range);
        }

        result.AddError($"{name} '{text}' {fault}");
        return null;
    }
}
