using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Options;
using LinkMargin.Engine.Decisions.Remedies;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Json;
using LinkMargin.Files.Tables;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Texts;
using LinkMargin.Reports.Words;

namespace LinkMargin.Cli.Commands;

/// <summary>What would help a spot most.</summary>
internal static class ImproveCommand
{
    private const int ProgressSteps = 1000;

    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation, CommonOptions common)
    {
        Argument<string> file = HouseArgument.Create();
        Option<string?> spot = CommonOptions.Text("--spot", "SPOT", "Name of the spot; default: the best one.");
        Option<ModelDepth?> depth = ModelOption.Create();
        Option<string[]?> occupied = OccupiedOption.Create();
        Option<string[]?> whatIf = WhatIfOption.Create();
        Option<string?> fitted = FittedOption.Create();
        Option<double?> confidence = ConfidenceOption.Create();
        var command = new Command("improve", "Find what would help a spot most: a lead for its receiver, an open side of a rack, another shelf, a moved seat, "
            + "an open door, other controllers, a cable; each recomputed with the full model, and pairs where one is not enough."
            + ExitCodes.Of("a seat does not pass with any remedy"))
        {
            file, spot, confidence, depth, occupied, whatIf, fitted,
        };
        command.SetAction(parse =>
        {
            MaterialTables tables = LoadedTables.Read(invocation, parse, common);
            LoadedHouse loaded = HouseLoading.Read(invocation, tables, parse.GetValue(file)!, parse.GetValue(whatIf), parse.GetValue(fitted));
            HouseLoading.NeedSpotsAndSeats(loaded);
            House house = loaded.House;
            IReadOnlyList<Seat> people = OccupiedOption.Read(parse.GetValue(occupied), house, invocation);
            var model = new LinkModel(house, ModelOption.Of(parse, depth), people);
            double often = ConfidenceOption.Of(parse, confidence);
            var judge = new JudgeAtConfidence(loaded.Uncertainty, often);
            Spot chosen = parse.GetValue(spot) is { } name
                ? NamedThing.One(spot.Name, "spot", name, house.Spots, s => s.Name)
                : judge.BestSpot(model)!.Spot;
            if (!house.Seats.Any(seat => seat.IsPlayedAt(chosen)))
            {
                throw new CannotBeDoneException($"no seat plays a console at '{chosen.Name}', so there is nothing to improve; choose another spot or change 'plays'");
            }

            var search = new ImproveSearch(house, model, ImproveRequests.For(chosen, tables), judge);
            var progress = new Progress(ProgressSteps);
            ImproveResult? result = null;
            ProgressBar.While(invocation, "remedies", progress, () => result = search.Run(
                share => progress.Reach((long)(share * ProgressSteps)), invocation.Cancellation));
            if (parse.GetValue(common.Json))
            {
                invocation.Output.WriteLine(JsonText.Of(ImproveDocument.Of(house, result!, people, often, new RemedyWords(loaded).What) with { WhatIf = loaded.WhatIfOrNone, FittedToMeasurements = loaded.FittedToMeasurements }));
            }
            else
            {
                loaded.WriteWhatIf(invocation.Output, invocation.Width);
                new ImproveText(loaded, result!) { Occupied = people, Confidence = often }.Write(invocation.Output, invocation.Width);
            }

            return result!.CanPassAll ? ExitCodes.Done : ExitCodes.SeatFails;
        });
        return command;
    }
}
