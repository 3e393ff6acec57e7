using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Maps;
using LinkMargin.Cli.Options;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Files.Json;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Texts;

namespace LinkMargin.Cli.Commands;

/// <summary>A picture of the margin for each spot and level, and the numbers.</summary>
internal static class MapCommand
{
    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation, CommonOptions common)
    {
        Argument<string> file = HouseArgument.Create();
        Option<string?> spot = CommonOptions.Text("--spot", "SPOT", "Name of one spot; default: all.");
        Option<string?> level = CommonOptions.Text("--level", "LEVEL", "Name of one level; default: all.");
        Option<WrittenLength?> cell = LengthOption.Create("--cell", "Side of a cell; default 0.1 m.", MapLengths.Cell);
        Option<WrittenLength?> hands = LengthOption.Create(
            "--hands", "Height of the hands above the floor; default 0.7 m, as on a sofa.", MapLengths.Hands);
        Option<string?> folder = CommonOptions.Text("--out", "DIR", "Folder for the files; default: named after the house file.");
        Option<bool> csv = CommonOptions.Flag("--csv", "Also write the numbers as CSV.");
        Option<bool> geojson = CommonOptions.Flag("--geojson", "Also write the numbers as GeoJSON, in metres on the plan.");
        Option<bool> exact = CommonOptions.Flag("--exact", "Trace every cell; takes about six times as long.");
        Option<ModelDepth?> depth = ModelOption.Create();
        Option<double?> confidence = ConfidenceOption.Create();
        Option<string?> show = ShowOption.Create();
        Option<string[]?> occupied = OccupiedOption.Create();
        Option<string[]?> whatIf = WhatIfOption.Create();
        Option<string?> fitted = FittedOption.Create();
        Option<bool> paths = CommonOptions.Flag(
            "--paths", "Instead, draw the paths of one link, from --spot to --seat, over the plan and on a section.");
        Option<string?> seat = CommonOptions.Text(
            "--seat", "SEAT", "With --paths: name of the seat; optional if there is only one.");
        var command = new Command(
            "map",
            "Draw the margin for each spot and level, and all maps side by side; or, with --paths, the paths "
                + "from one spot to one seat." + ExitCodes.Of())
        {
            file, spot, level, cell, hands, folder, csv, geojson, exact, depth, confidence, show, occupied, whatIf, fitted, paths, seat,
        };
        command.SetAction(parse =>
        {
            string typed = parse.GetValue(file)!;
            LoadedHouse loaded = HouseLoading.Read(invocation, LoadedTables.Read(invocation, parse, common), typed, parse.GetValue(whatIf), parse.GetValue(fitted));
            House house = loaded.House;
            string? spotName = parse.GetValue(spot), levelName = parse.GetValue(level);
            string into = parse.GetValue(folder) ?? $"{Path.GetFileNameWithoutExtension(typed)}-maps";
            if (parse.GetValue(paths))
            {
                RefuseGiven(parse, [level, cell, hands, csv, geojson, exact, show], "--paths draws one link on every level it touches; omit");
                (Spot from, Seat to) = LinkOf(spot, spotName, seat, parse.GetValue(seat), house);
                PathsDocument drawn = new PathsMaker(invocation, loaded, Model(), ConfidenceOption.Of(parse, confidence)).Make(from, to, into, parse.GetValue(common.Force));
                WritePaths(invocation, loaded, drawn, parse.GetValue(common.Json));
                return ExitCodes.Done;
            }

            RefuseGiven(parse, [seat], "a map shows every seat of its level; add --paths to draw one link, or omit");
            var order = new MapOrder(
                NamedThing.OneOrAll(spot.Name, "spot", spotName, house.Spots, s => s.Name),
                [.. NamedThing.OneOrAll(level.Name, "level", levelName, house.Levels, l => l.Name).Select(l => house.Levels.ToList().IndexOf(l))],
                parse.GetValue(cell)?.Metres(loaded.Unit) ?? FieldRequest.DefaultCellMetres,
                parse.GetValue(hands)?.Metres(loaded.Unit) ?? FieldRequest.SofaHandsMetres,
                into)
            {
                Confidence = ConfidenceOption.Of(parse, confidence),
                ShowsMedian = ShowOption.IsMedian(parse, show),
                WithCsv = parse.GetValue(csv),
                WithGeoJson = parse.GetValue(geojson),
                IsExact = parse.GetValue(exact),
                Force = parse.GetValue(common.Force),
            };
            CellCount.RefuseTooMany(order.Levels.Select(l => house.Levels[l]), order.CellMetres);
            MapsDocument maps = new MapMaker(invocation, loaded, Model()).Make(order);
            if (parse.GetValue(common.Json))
            {
                invocation.Output.WriteLine(JsonText.Of(maps));
            }
            else
            {
                loaded.WriteWhatIf(invocation.Output, invocation.Width);
                MapsText.Write(maps, loaded.Lengths, invocation.Output, invocation.Width);
            }

            return ExitCodes.Done;

            LinkModel Model() => new(
                house, ModelOption.Of(parse, depth), OccupiedOption.Read(parse.GetValue(occupied), house, invocation));
        });
        return command;
    }

    private static void RefuseGiven(ParseResult parse, IReadOnlyList<Option> options, string why)
    {
        if (options.FirstOrDefault(option => parse.GetResult(option) is { Implicit: false }) is { } given)
        {
            throw new CannotBeDoneException($"{why} {given.Name}");
        }
    }

    private static (Spot Spot, Seat Seat) LinkOf(
        Option spotOption, string? spot, Option seatOption, string? seat, House house)
    {
        if (spot is null && seat is null && house.Spots.Count > 1 && house.Seats.Count > 1)
        {
            throw new CannotBeDoneException(
                $"--paths draws one link; choose it with {spotOption.Name}: {List(house.Spots.Select(s => s.Name))}; "
                    + $"and {seatOption.Name}: {List(house.Seats.Select(s => s.Name))}");
        }

        return (
            NamedThing.One(spotOption.Name, "spot", spot, house.Spots, s => s.Name),
            NamedThing.One(seatOption.Name, "seat", seat, house.Seats, s => s.Name));

        static string List(IEnumerable<string> names) => string.Join(", ", names.Select(name => $"'{name}'"));
    }

    private static void WritePaths(Invocation invocation, LoadedHouse loaded, PathsDocument drawn, bool asJson)
    {
        if (asJson)
        {
            invocation.Output.WriteLine(JsonText.Of(drawn));
            return;
        }

        loaded.WriteWhatIf(invocation.Output, invocation.Width);
        WordWrap.Write(
            $"The paths from '{drawn.Spot}' to '{drawn.Seat}' over the plan and on a section of {drawn.House}: {drawn.Picture}",
            invocation.Output,
            invocation.Width);
    }
}
