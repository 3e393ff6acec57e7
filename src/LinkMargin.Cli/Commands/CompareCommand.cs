using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Maps;
using LinkMargin.Cli.Options;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Runs;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Json;
using LinkMargin.Files.Writing;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Texts;

namespace LinkMargin.Cli.Commands;

/// <summary>Every seat with every spot, the ranking, and which spot to choose.</summary>
internal static class CompareCommand
{
    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation, CommonOptions common)
    {
        Argument<string> file = HouseArgument.Create();
        Option<ModelDepth?> depth = ModelOption.Create();
        Option<string[]?> occupied = OccupiedOption.Create();
        Option<double?> confidence = ConfidenceOption.Create();
        Option<string[]?> whatIf = WhatIfOption.Create();
        Option<string?> fitted = FittedOption.Create();
        Option<string?> picture = CommonOptions.Text("--plot", "FILE", "Picture (PNG) of all seats and spots with uncertainty and required margins.");
        Option<string?> csv = CommonOptions.Text("--csv", "FILE", "Also write the margins of all seats and spots as CSV.");
        var command = new Command("compare", "Compare all spots: margins to count on, weakest seats, ranking, best choice."
            + ExitCodes.Of("a seat does not pass at any spot")) { file, depth, confidence, occupied, whatIf, fitted, picture, csv };
        command.SetAction(parse =>
        {
            LoadedHouse loaded = HouseLoading.Read(invocation, LoadedTables.Read(invocation, parse, common), parse.GetValue(file)!, parse.GetValue(whatIf), parse.GetValue(fitted));
            HouseLoading.NeedSpotsAndSeats(loaded);
            string? drawn = parse.GetValue(picture), table = parse.GetValue(csv);
            bool force = parse.GetValue(common.Force);
            invocation.Files.NeedWritable(drawn, force);
            invocation.Files.NeedWritable(table, force);
            IReadOnlyList<Seat> people = OccupiedOption.Read(parse.GetValue(occupied), loaded.House, invocation);
            (Ranking ranking, HouseUncertainty uncertainty, CloseCall call) = Judge(loaded.House, people);
            (Ranking Ranking, HouseUncertainty Uncertainty, CloseCall Call)? before = loaded.WhatIf.Count == 0
                ? null
                : Judge(loaded.AsWritten, [.. loaded.AsWritten.Seats.Where(seat => people.Any(p => p.Name == seat.Name))]);
            SpotRuns[] runs = RankedRuns.Of(loaded.House, ranking);
            if (drawn is not null)
            {
                SpotsPictureFile.Write(invocation, loaded, ranking, uncertainty, call, drawn, force);
            }

            if (table is not null)
            {
                invocation.Files.Write(table, stream => LinksCsv.WriteMargins(loaded.House, ranking, uncertainty, stream), force);
            }

            if (parse.GetValue(common.Json))
            {
                invocation.Output.WriteLine(JsonText.Of(ComparisonDocument.Of(loaded.House, ranking, people, uncertainty, call).WithCables(runs) with
                {
                    WhatIf = loaded.WhatIfOrNone, FittedToMeasurements = loaded.FittedToMeasurements, Picture = drawn, Csv = table,
                    AsWritten = before is { } was ? ComparisonDocument.Of(loaded.AsWritten, was.Ranking, people, was.Uncertainty, was.Call) : null,
                }));
            }
            else
            {
                loaded.WriteWhatIf(invocation.Output, invocation.Width);
                new ComparisonText(loaded.House, ranking) { Occupied = people, Uncertainty = uncertainty, Call = call, Runs = runs, Lengths = loaded.Lengths }.Write(invocation.Output, invocation.Width);
                if (drawn is not null)
                {
                    WordWrap.Write($"{drawn}: all seats and spots.", invocation.Output, invocation.Width);
                }

                if (table is not null)
                {
                    WordWrap.Write($"{table}: margins of all seats and spots.", invocation.Output, invocation.Width);
                }

                if (before is { } was)
                {
                    invocation.Output.WriteLine();
                    new ChangeText(loaded.House, was.Ranking, ranking).Write(invocation.Output, invocation.Width);
                }
            }

            return ranking.SeatsNeverPassing.Count == 0 ? ExitCodes.Done : ExitCodes.SeatFails;

            (Ranking Ranking, HouseUncertainty Uncertainty, CloseCall Call) Judge(House house, IReadOnlyList<Seat> sitting)
            {
                var model = new LinkModel(house, ModelOption.Of(parse, depth), sitting);
                var sure = HouseUncertainty.Of(model, house.Spots, house.Seats, loaded.Uncertainty, ConfidenceOption.Of(parse, confidence));
                Ranking ranked = Ranking.Of(model, sure.AtConfidence);
                return (ranked, sure, CloseCall.Of(model, ranked, sure, loaded.Uncertainty));
            }
        });
        return command;
    }
}
