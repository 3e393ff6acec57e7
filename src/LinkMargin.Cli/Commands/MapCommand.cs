using System.CommandLine;
using LinkMargin.Cli.Maps;
using LinkMargin.Cli.Options;
using LinkMargin.Cli.Output;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Files.Json;
using Path = System.IO.Path;

namespace LinkMargin.Cli.Commands;

/// <summary>A picture of the margin for each spot and level, and the numbers.</summary>
internal static class MapCommand
{
    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation, CommonOptions common)
    {
        Argument<string> file = HouseArgument.Create();
        Option<string?> spot = CommonOptions.Text("--spot", "SPOT", "One spot by its name; all of them where it is left out.");
        Option<string?> level = CommonOptions.Text("--level", "LEVEL", "One level by its name; all of them where it is left out.");
        Option<WrittenLength?> cell = LengthOption.Create("--cell", "Side of a cell; 0.1 m where it is left out.", MapLengths.Cell);
        Option<WrittenLength?> hands = LengthOption.Create(
            "--hands", "Height of the hands above the floor; 0.7 m, as on a sofa, where it is left out.", MapLengths.Hands);
        Option<string?> folder = CommonOptions.Text("--out", "DIR", "Where the files go; a folder named after the house file where it is left out.");
        Option<bool> csv = CommonOptions.Flag("--csv", "Write the numbers as CSV too.");
        Option<bool> geojson = CommonOptions.Flag("--geojson", "Write the numbers as GeoJSON too, in plan metres.");
        Option<ModelDepth?> depth = ModelOption.Create();
        Option<string[]?> occupied = OccupiedOption.Create();
        var command = new Command("map", "A picture of the margin for each spot and level, and one with all of them side by side.")
        {
            file, spot, level, cell, hands, folder, csv, geojson, depth, occupied,
        };
        command.SetAction(parse =>
        {
            string typed = parse.GetValue(file)!;
            LoadedHouse loaded = LoadedHouse.Read(invocation, LoadedTables.Read(invocation, parse, common), typed);
            House house = loaded.House;
            string? spotName = parse.GetValue(spot), levelName = parse.GetValue(level);
            var order = new MapOrder(
                NamedThing.OneOrAll(spot.Name, "spot", spotName, house.Spots, s => s.Name),
                [.. NamedThing.OneOrAll(level.Name, "level", levelName, house.Levels, l => l.Name).Select(l => house.Levels.ToList().IndexOf(l))],
                parse.GetValue(cell)?.Metres(loaded.Unit) ?? FieldRequest.DefaultCellMetres,
                parse.GetValue(hands)?.Metres(loaded.Unit) ?? FieldRequest.SofaHandsMetres,
                parse.GetValue(folder) ?? $"{Path.GetFileNameWithoutExtension(typed)}-maps")
            {
                WithCsv = parse.GetValue(csv),
                WithGeoJson = parse.GetValue(geojson),
                Force = parse.GetValue(common.Force),
            };
            var model = new LinkModel(
                house, ModelOption.Of(parse, depth), OccupiedOption.Read(parse.GetValue(occupied), house, invocation.Error));
            MapsDocument maps = new MapMaker(invocation, loaded, model).Make(order);
            if (parse.GetValue(common.Json))
            {
                invocation.Output.WriteLine(JsonText.Of(maps));
            }
            else
            {
                MapsText.Write(maps, loaded.Lengths, invocation.Output, invocation.Width);
            }

            return ExitCodes.Done;
        });
        return command;
    }
}
