using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Options;
using LinkMargin.Files.Tables;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Texts;

namespace LinkMargin.Cli.Commands;

/// <summary>The tables a command works with: those of <c>--materials</c>, or the built-in ones.</summary>
internal static class LoadedTables
{
    /// <summary>Reads them; problems go to the messages, an error ends the command.</summary>
    public static MaterialTables Read(Invocation invocation, ParseResult parse, CommonOptions common)
    {
        string? folder = parse.GetValue(common.Materials);
        MaterialTablesResult result = folder is null
            ? MaterialTablesFile.ReadBuiltIn()
            : MaterialTablesFile.ReadFolder(invocation.Files.ToReadFolder(folder, MaterialTablesFile.FileNames));
        ProblemLines.Write(result.Problems, invocation.Error, invocation.Width);
        return result.Tables
            ?? throw new CannotBeDoneException($"the tables of {folder ?? "the program"} cannot be used; see the messages above");
    }
}
