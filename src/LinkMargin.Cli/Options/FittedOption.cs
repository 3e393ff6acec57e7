using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Measurements;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Texts;

namespace LinkMargin.Cli.Options;

/// <summary>Losses fitted to readings, in place of the tables'.</summary>
internal static class FittedOption
{
    private const string Name = "--fitted";

    /// <summary>Makes one.</summary>
    public static Option<string?> Create() => CommonOptions.Text(
        Name, "FILE", "Losses fitted to readings by 'linkmargin fit', used in place of the tables' for this run.");

    /// <summary>Reads the file; what is wrong or odd in it goes to the talk, and a mistake ends the command.</summary>
    /// <param name="invocation">Where the talk goes.</param>
    /// <param name="typed">The file as it was typed; null where the option was left out.</param>
    /// <param name="house">The house it is applied to, as the tables say.</param>
    public static FittedLosses? Read(Invocation invocation, string? typed, House house)
    {
        if (typed is null)
        {
            return null;
        }

        FittedParseResult result = FittedFile.Read(invocation.Files.ToRead(typed), house);
        ProblemLines.Write(result.Problems, invocation.Error, invocation.Width);
        return result.Fitted ?? throw new CannotBeDoneException(ProblemLines.FixFirst(typed, result.Problems));
    }
}
