using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Maps;
using LinkMargin.Cli.Options;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Sensitivity;
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
        Option<bool> assumptions = CommonOptions.Flag("--assumptions", "Also recompute the margin with other plausible materials: shows which assumptions it depends on.");
        Option<string?> picture = CommonOptions.Text("--plot", "FILE", "With --assumptions: a picture (PNG) of them.");
        Option<ModelDepth?> depth = ModelOption.Create();
        Option<string[]?> occupied = OccupiedOption.Create();
        Option<double?> confidence = ConfidenceOption.Create();
        Option<string[]?> whatIf = WhatIfOption.Create();
        Option<string?> fitted = FittedOption.Create();
        var command = new Command("explain", "Explain one link line by line: transmit power, losses of each path, margin."
            + ExitCodes.Of("the seat does not pass"))
        {
            file, spot, seat, all, assumptions, picture, depth, confidence, occupied, whatIf, fitted,
        };
        command.SetAction(parse =>
        {
            LoadedHouse loaded = HouseLoading.Read(invocation, LoadedTables.Read(invocation, parse, common), parse.GetValue(file)!, parse.GetValue(whatIf), parse.GetValue(fitted));
            House house = loaded.House;
            string? drawn = parse.GetValue(picture);
            if (drawn is not null && !parse.GetValue(assumptions))
            {
                throw new CannotBeDoneException($"{picture.Name} draws what {assumptions.Name} finds; add {assumptions.Name}");
            }

            invocation.Files.NeedWritable(drawn, parse.GetValue(common.Force));
            var model = new LinkModel(house, ModelOption.Of(parse, depth), OccupiedOption.Read(parse.GetValue(occupied), house, invocation));
            LinkBudget budget = LinkEvaluation.Budget(
                model,
                NamedThing.One(spot.Name, "spot", parse.GetValue(spot), house.Spots, s => s.Name),
                NamedThing.One(seat.Name, "seat", parse.GetValue(seat), house.Seats, s => s.Name));
            var uncertainty = HouseUncertainty.Of(model, [budget.Spot], [budget.Seat], loaded.Uncertainty, ConfidenceOption.Of(parse, confidence));
            if (parse.GetValue(assumptions) && !budget.Seat.IsPlayedAt(budget.Spot))
            {
                throw new CannotBeDoneException($"'{budget.Seat.Name}' plays another console ('plays' in the house file), so no decision depends on this link; omit {assumptions.Name}");
            }

            SensitivityStudy? study = parse.GetValue(assumptions) ? AssumptionsStudy.Of(invocation, loaded, model, uncertainty.Confidence, budget) : null;
            if (study is not null && drawn is not null)
            {
                AssumptionsPictureFile.Write(invocation, loaded, study, budget, drawn, parse.GetValue(common.Force));
            }

            if (parse.GetValue(common.Json))
            {
                invocation.Output.WriteLine(JsonText.Of(BudgetDocument.Of(house, budget, uncertainty) with
                {
                    WhatIf = loaded.WhatIfOrNone,
                    FittedToMeasurements = loaded.FittedToMeasurements,
                    Assumptions = study is null ? null : AssumptionDocument.Of(house, study, budget),
                    Picture = drawn,
                }));
            }
            else
            {
                loaded.WriteWhatIf(invocation.Output, invocation.Width);
                new BudgetText(loaded) { Uncertainty = uncertainty, WithAllPaths = parse.GetValue(all) }.Write(budget, invocation.Output, invocation.Width);
                if (study is not null)
                {
                    invocation.Output.WriteLine();
                    new AssumptionsText(house, study).Write(budget, invocation.Output, invocation.Width);
                    if (drawn is not null)
                    {
                        WordWrap.Write($"{drawn}: these assumptions.", invocation.Output, invocation.Width);
                    }
                }

                WordWrap.Write(Cautions.Estimates, invocation.Output, invocation.Width);
            }

            return uncertainty.AtConfidence.Passes(budget) ? ExitCodes.Done : ExitCodes.SeatFails;
        });
        return command;
    }
}
