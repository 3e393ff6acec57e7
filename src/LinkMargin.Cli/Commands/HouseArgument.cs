using System.CommandLine;

namespace LinkMargin.Cli.Commands;

/// <summary>The house file a command works on.</summary>
internal static class HouseArgument
{
    /// <summary>Makes one.</summary>
    public static Argument<string> Create() => new("HOUSE") { Description = "the house file, such as house.yaml" };
}
