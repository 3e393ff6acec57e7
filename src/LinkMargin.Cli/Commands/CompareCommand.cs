using System.CommandLine;
using LinkMargin.Cli.Options;
using LinkMargin.Cli.Output;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Files.Json;

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
        Option<string[]?> whatIf = WhatIfOption.Create();
        var command = new Command("compare", "Seats against spots: margins, worst seats, ranking, and which spot to choose. "
            + "Ends with 1 where a seat is below its required margin at every spot.") { file, depth, occupied, whatIf };
        command.SetAction(parse =>
        {
            LoadedHouse loaded = LoadedHouse.Read(invocation, LoadedTables.Read(invocation, parse, common), parse.GetValue(file)!, parse.GetValue(whatIf));
            loaded.NeedSpotsAndSeats();
            IReadOnlyList<Seat> people = OccupiedOption.Read(parse.GetValue(occupied), loaded.House, invocation.Error);
            Ranking ranking = Ranking.Of(new LinkModel(loaded.House, ModelOption.Of(parse, depth), people));
            Ranking? before = loaded.WhatIf.Count == 0 ? null : Ranking.Of(new LinkModel(
                loaded.AsWritten, ModelOption.Of(parse, depth), [.. loaded.AsWritten.Seats.Where(seat => people.Any(p => p.Name == seat.Name))]));
            if (parse.GetValue(common.Json))
            {
                invocation.Output.WriteLine(JsonText.Of(ComparisonDocument.Of(loaded.House, ranking, people) with
                {
                    WhatIf = loaded.WhatIfOrNone,
                    AsWritten = before is null ? null : ComparisonDocument.Of(loaded.AsWritten, before, people),
                }));
            }
            else
            {
                loaded.WriteWhatIf(invocation.Output, invocation.Width);
                new ComparisonText(loaded.House, ranking) { Occupied = people }.Write(invocation.Output, invocation.Width);
                if (before is not null)
                {
                    invocation.Output.WriteLine();
                    new ChangeText(loaded.House, before, ranking).Write(invocation.Output, invocation.Width);
                }
            }

            return ranking.SeatsNeverMet.Count == 0 ? ExitCodes.Done : ExitCodes.SeatNotMet;
        });
        return command;
    }
}
