using System.CommandLine;
using LinkMargin.Cli.Options;

namespace LinkMargin.Cli.Commands;

/// <summary>The house file a command works on.</summary>
internal static class HouseArgument
{
    /// <summary>Makes the argument.</summary>
    public static Argument<string> Create() => new(OpenedBundle.HouseArgumentName) { Description = "the house file, such as house.yaml, or a bundle (.zip)" };
}
