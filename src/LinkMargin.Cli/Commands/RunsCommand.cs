using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Maps;
using LinkMargin.Cli.Options;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;
using LinkMargin.Files.Json;
using LinkMargin.Files.Writing;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Texts;

namespace LinkMargin.Cli.Commands;

/// <summary>The cable runs that each spot needs, or the pull sheet of one.</summary>
internal static class RunsCommand
{
    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation, CommonOptions common)
    {
        Argument<string> file = HouseArgument.Create();
        Option<string?> spot = CommonOptions.Text("--spot", "SPOT", "Name of one spot, for its pull sheet; default: all spots in a table.");
        Option<string?> picture = CommonOptions.Text("--plot", "FILE", "With --spot: picture (PNG) of the new runs on plan and section.");
        Option<bool> csv = CommonOptions.Flag("--csv", "Print the runs as comma-separated values.");
        Option<string[]?> whatIf = WhatIfOption.Create();
        var command = new Command("runs", "List the video cables that each spot needs: their routes, what to buy, which holes to bore, whether they fit and carry the picture."
            + ExitCodes.Of("a run cannot be made with what is known"))
        {
            file, spot, csv, picture, whatIf,
        };
        command.SetAction(parse =>
        {
            LoadedHouse loaded = HouseLoading.Read(invocation, LoadedTables.Read(invocation, parse, common), parse.GetValue(file)!, parse.GetValue(whatIf), null);
            House house = loaded.House;
            if (house.Spots.Count == 0)
            {
                throw NamedThing.NoneOf("spot");
            }

            if (house.Cabling.Displays.Count == 0)
            {
                throw new CannotBeDoneException("the house file describes no displays, so no run can be planned; add 'displays' (see 'linkmargin guide house-file')");
            }

            bool wantsJson = parse.GetValue(common.Json), wantsCsv = parse.GetValue(csv);
            if (wantsJson && wantsCsv)
            {
                throw new CannotBeDoneException("--json and --csv exclude each other; remove one");
            }

            string? drawn = parse.GetValue(picture);
            if (drawn is not null && parse.GetValue(spot) is null)
            {
                throw new CannotBeDoneException("--plot draws the runs of one spot; name it with --spot");
            }

            Spot[] chosen = parse.GetValue(spot) is { } name ? [NamedThing.One(spot.Name, "spot", name, house.Spots, s => s.Name)] : [.. house.Spots];
            var planner = new RunPlanner(house);
            SpotRuns[] runs = [.. chosen.Select(one =>
            {
                invocation.Cancellation.ThrowIfCancellationRequested();
                return planner.Plan(one);
            })];
            if (drawn is not null)
            {
                RunsPictureFile.Write(invocation, loaded, runs[0], drawn, parse.GetValue(common.Force));
            }

            if (wantsJson)
            {
                invocation.Output.WriteLine(JsonText.Of(new RunsDocument(house.Name, [.. runs.Select(SpotRunsDocument.Of)]) { WhatIf = loaded.WhatIfOrNone, Picture = drawn }));
            }
            else if (wantsCsv)
            {
                invocation.Output.Write(RunsCsv.Of(runs));
            }
            else
            {
                loaded.WriteWhatIf(invocation.Output, invocation.Width);
                var text = new RunsText(loaded);
                if (parse.GetValue(spot) is null)
                {
                    text.WriteOverview(runs, invocation.Output, invocation.Width);
                }
                else
                {
                    text.WriteSheet(runs[0], invocation.Output, invocation.Width);
                    if (drawn is not null)
                    {
                        WordWrap.Write($"{drawn}: the new runs on plan and section.", invocation.Output, invocation.Width);
                    }
                }
            }

            return runs.All(one => one.IsComplete) ? ExitCodes.Done : ExitCodes.SeatFails;
        });
        return command;
    }
}
