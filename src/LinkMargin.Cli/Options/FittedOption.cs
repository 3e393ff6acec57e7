using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Measurements;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Texts;

namespace LinkMargin.Cli.Options;

/// <summary>Losses fitted to measurements, which replace the table losses.</summary>
internal static class FittedOption
{
    private const string Name = "--fitted";

    /// <summary>Makes the option.</summary>
    public static Option<string?> Create() => CommonOptions.Text(
        Name, "FILE", "Losses fitted to measurements by 'linkmargin fit'; they replace the table losses in this run.");

    /// <summary>Reads the file; problems are reported, an error ends the command.</summary>
    /// <param name="invocation">Where messages go.</param>
    /// <param name="typed">The file as typed; null without the option.</param>
    /// <param name="house">The house it is applied to, with its table losses.</param>
    public static FittedLosses? Read(Invocation invocation, string? typed, House house)
    {
        if (typed is null)
        {
            return null;
        }

        return Checked(invocation, typed, FittedFile.Read(invocation.Files.ToRead(typed), house));
    }

    /// <summary>The same for the file in a bundle.</summary>
    /// <param name="invocation">Where messages go.</param>
    /// <param name="bundle">The bundle as typed.</param>
    /// <param name="inside">The content of the file in it.</param>
    /// <param name="house">The house it is applied to, with its table losses.</param>
    public static FittedLosses Read(Invocation invocation, string bundle, byte[] inside, House house) =>
        Checked(invocation, bundle, FittedFile.Parse(inside, $"{bundle}: fitted losses", house));

    private static FittedLosses Checked(Invocation invocation, string typed, FittedParseResult result)
    {
        ProblemLines.Write(result.Problems, invocation.Error, invocation.Width);
        return result.Fitted ?? throw new CannotBeDoneException(ProblemLines.FixFirst(typed, result.Problems));
    }
}
