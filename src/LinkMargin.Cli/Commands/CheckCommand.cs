using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Maps;
using LinkMargin.Cli.Options;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Json;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Tables;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Texts;

namespace LinkMargin.Cli.Commands;

/// <summary>Reports errors and warnings of a house file and draws the plan.</summary>
internal static class CheckCommand
{
    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation, CommonOptions common)
    {
        Argument<string> file = HouseArgument.Create();
        Option<string?> folder = CommonOptions.Text("--out", "DIR", "Folder for the plan; default: beside the house file.");
        Option<string[]?> whatIf = WhatIfOption.Create();
        var command = new Command("check", "Report all errors and warnings of a house file and draw the plan." + ExitCodes.Of()) { file, folder, whatIf };
        command.SetAction(parse =>
        {
            string typed = parse.GetValue(file)!;
            MaterialTables tables = LoadedTables.Read(invocation, parse, common);
            HouseParseResult parsed = HouseLoading.ReadFile(invocation, tables, typed);
            bool asJson = parse.GetValue(common.Json);
            if (!asJson)
            {
                // Problems are reported before anything is drawn: a drawing that fails must not hide them.
                ProblemLines.Write(parsed.Problems, invocation.Output, invocation.Width);
            }

            LoadedHouse? loaded = parsed.House is null
                ? null
                : HouseLoading.Edit(HouseLoading.Of(parsed, tables), parse.GetValue(whatIf), invocation);
            string? plan = loaded is null
                ? null
                : Draw(invocation, loaded, typed, parse.GetValue(folder), parse.GetValue(common.Force), parsed.WarningCount);
            var document = CheckDocument.Of(typed, loaded?.House, parsed.Problems, plan) with { WhatIf = loaded?.WhatIfOrNone };
            if (asJson)
            {
                invocation.Output.WriteLine(JsonText.Of(document));
            }
            else
            {
                loaded?.WriteWhatIf(invocation.Output, invocation.Width);
                CheckText.Write(document, new LengthFormat(parsed.Unit), invocation.Output, invocation.Width);
            }

            return parsed.House is null ? ExitCodes.CouldNotBeDone : ExitCodes.Done;
        });
        return command;
    }

    private static string Draw(Invocation invocation, LoadedHouse loaded, string typed, string? folder, bool force, int warnings)
    {
        if (folder is not null)
        {
            invocation.Files.MakeFolder(folder);
        }

        string plan = Path.Combine(
            folder ?? Path.GetDirectoryName(typed) ?? "", $"{Path.GetFileNameWithoutExtension(typed)}-plan.png");
        PlanFile.Write(invocation, loaded, plan, force, warnings);
        return plan;
    }
}
