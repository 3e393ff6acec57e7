using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Maps;
using LinkMargin.Cli.Options;
using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Files.Json;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Texts;

namespace LinkMargin.Cli.Commands;

/// <summary>The best places for a console, named spots or not, and a map of the choice.</summary>
internal static class PlaceCommand
{
    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation, CommonOptions common)
    {
        Argument<string> file = HouseArgument.Create();
        Option<bool> everywhere = CommonOptions.Flag("--everywhere", "Search all free floor, even if the house file has zones.");
        Option<WrittenLength?> height = LengthOption.Create(
            "--height", $"Height of the console above the floor where no zone gives one; default {string.Join(" and ", PlaceRequest.FloorHeightsMetres.Select(Metres))}.", PlaceLengths.Height);
        Option<WrittenLength?> grid = LengthOption.Create(
            "--grid", $"Spacing of the places; default {Metres(PlaceRequest.ZoneCellMetres)} in zones and {Metres(PlaceRequest.FloorCellMetres)} on the floor.", PlaceLengths.Grid);
        Option<string?> level = CommonOptions.Text("--level", "LEVEL", "Name of one level; default: all.");
        Option<string?> folder = CommonOptions.Text("--out", "DIR", "Folder for the map; default: beside the house file.");
        Option<ModelDepth?> depth = ModelOption.Create();
        Option<string[]?> occupied = OccupiedOption.Create();
        Option<string[]?> whatIf = WhatIfOption.Create();
        Option<string?> fitted = FittedOption.Create();
        Option<double?> confidence = ConfidenceOption.Create();
        var command = new Command("place", "Find the best places for a console, in the zones of the house file or on all free floor, "
            + "and draw a map of the margin of the weakest seat for a console anywhere."
            + ExitCodes.Of("a seat does not pass at the best place"))
        {
            file, everywhere, height, grid, level, folder, confidence, depth, occupied, whatIf, fitted,
        };
        command.SetAction(parse =>
        {
            string typed = parse.GetValue(file)!;
            LoadedHouse loaded = HouseLoading.Read(invocation, LoadedTables.Read(invocation, parse, common), typed, parse.GetValue(whatIf), parse.GetValue(fitted));
            House house = loaded.House;
            if (house.Seats.Count == 0)
            {
                throw NamedThing.NoneOf("seat");
            }

            var request = new PlaceRequest
            {
                Everywhere = parse.GetValue(everywhere),
                CellMetres = parse.GetValue(grid)?.Metres(loaded.Unit),
                HeightsMetres = parse.GetValue(height) is { } one ? [one.Metres(loaded.Unit)] : PlaceRequest.FloorHeightsMetres,
                LevelIndex = parse.GetValue(level) is { } name
                    ? house.Levels.ToList().IndexOf(NamedThing.One(level.Name, "level", name, house.Levels, l => l.Name))
                    : null,
            };
            var model = new LinkModel(house, ModelOption.Of(parse, depth), OccupiedOption.Read(parse.GetValue(occupied), house, invocation));
            var maker = new ChoiceMaker(invocation, loaded, model, ConfidenceOption.Of(parse, confidence));
            string picture = Path.Combine(
                parse.GetValue(folder) ?? Path.GetDirectoryName(typed) ?? "", $"{Path.GetFileNameWithoutExtension(typed)}-places.png");
            PlacesDocument document = maker.Make(request, picture, parse.GetValue(folder), parse.GetValue(common.Force));
            if (parse.GetValue(common.Json))
            {
                invocation.Output.WriteLine(JsonText.Of(document));
            }
            else
            {
                loaded.WriteWhatIf(invocation.Output, invocation.Width);
                new PlacesText(loaded).Write(document, invocation.Output, invocation.Width);
            }

            return document.Places[0].SeatsPassing == document.Places[0].Seats ? ExitCodes.Done : ExitCodes.SeatFails;
        });
        return command;
    }

    private static string Metres(double metres) => FormattableString.Invariant($"{metres} m");
}
