using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Options;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Json;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Texts;
using LinkMargin.Reports.Words;

namespace LinkMargin.Cli.Commands;

/// <summary>One budget, line by line.</summary>
internal static class ExplainCommand
{
    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation, CommonOptions common)
    {
        Argument<string> file = HouseArgument.Create();
        Option<string?> spot = CommonOptions.Text("--spot", "SPOT", "Name of the spot; optional if there is only one.");
        Option<string?> seat = CommonOptions.Text("--seat", "SEAT", "Name of the seat; optional if there is only one.");
        Option<bool> all = CommonOptions.Flag(BudgetText.AllPaths, "Details of every path, not only of the strongest.");
        Option<ModelDepth?> depth = ModelOption.Create();
        Option<string[]?> occupied = OccupiedOption.Create();
        Option<double?> confidence = ConfidenceOption.Create();
        Option<string[]?> whatIf = WhatIfOption.Create();
        Option<string?> fitted = FittedOption.Create();
        var command = new Command("explain", "Explain one link line by line: transmit power, losses of each path, margin."
            + ExitCodes.Of("the seat does not pass"))
        {
            file, spot, seat, all, depth, confidence, occupied, whatIf, fitted,
        };
        command.SetAction(parse =>
        {
            LoadedHouse loaded = HouseLoading.Read(invocation, LoadedTables.Read(invocation, parse, common), parse.GetValue(file)!, parse.GetValue(whatIf), parse.GetValue(fitted));
            House house = loaded.House;
            var model = new LinkModel(house, ModelOption.Of(parse, depth), OccupiedOption.Read(parse.GetValue(occupied), house, invocation));
            LinkBudget budget = LinkEvaluation.Budget(
                model,
                NamedThing.One(spot.Name, "spot", parse.GetValue(spot), house.Spots, s => s.Name),
                NamedThing.One(seat.Name, "seat", parse.GetValue(seat), house.Seats, s => s.Name));
            var uncertainty = HouseUncertainty.Of(model, [budget.Spot], [budget.Seat], loaded.Uncertainty, ConfidenceOption.Of(parse, confidence));
            if (parse.GetValue(common.Json))
            {
                invocation.Output.WriteLine(JsonText.Of(BudgetDocument.Of(house, budget, uncertainty) with { WhatIf = loaded.WhatIfOrNone, FittedToMeasurements = loaded.FittedToMeasurements }));
            }
            else
            {
                loaded.WriteWhatIf(invocation.Output, invocation.Width);
                new BudgetText(loaded) { Uncertainty = uncertainty, WithAllPaths = parse.GetValue(all) }.Write(budget, invocation.Output, invocation.Width);
                WordWrap.Write(Cautions.Estimates, invocation.Output, invocation.Width);
            }

            return uncertainty.AtConfidence.Passes(budget) ? ExitCodes.Done : ExitCodes.SeatFails;
        });
        return command;
    }
}
