using System.CommandLine;
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
        CustomParser = result => new WrittenLength(name, result.Tokens[0].Value, range),
    };
}
