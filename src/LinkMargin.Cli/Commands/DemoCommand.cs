using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Maps;
using LinkMargin.Cli.Options;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Json;
using LinkMargin.Files.Resources;
using LinkMargin.Files.Tables;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Texts;

namespace LinkMargin.Cli.Commands;

/// <summary>Runs the built-in house: its file, a ranking, a budget and maps.</summary>
internal static class DemoCommand
{
    private const string DefaultFolder = "linkmargin-demo";

    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation, CommonOptions common)
    {
        Option<string?> folder = CommonOptions.Text("--out", "DIR", $"Folder for the files; default {DefaultFolder}.");
        Option<ModelDepth?> depth = ModelOption.Create();
        Option<double?> confidence = ConfidenceOption.Create();
        var command = new Command("demo", "Run everything on the built-in house: ranking, a budget, maps; its house file is a starting point for yours." + ExitCodes.Of())
        {
            folder, depth, confidence,
        };
        command.SetAction(parse =>
        {
            MaterialTables tables = LoadedTables.Read(invocation, parse, common);
            string into = parse.GetValue(folder) ?? DefaultFolder;
            bool force = parse.GetValue(common.Force);
            (LoadedHouse loaded, int warnings) = ReadDemo(invocation, tables);
            string houseFile = Path.Combine(into, $"{FileNames.Stem(loaded.House.Name)}.yaml"), plan = Path.Combine(into, "plan.png"), spots = Path.Combine(into, "spots.png");
            string measurements = Path.Combine(into, $"{FileNames.Stem(loaded.House.Name)}-measurements.csv");

            invocation.Files.MakeFolder(into);
            invocation.Files.Write(houseFile, DemoHouse.Text, force);
            invocation.Files.Write(Path.Combine(into, HouseSchema.FileName), HouseSchema.Text, force);
            invocation.Files.Write(measurements, DemoMeasurements.Text, force);
            PlanFile.Write(invocation, loaded, plan, force, warnings);

            var model = new LinkModel(loaded.House, ModelOption.Of(parse, depth));
            var uncertainty = HouseUncertainty.Of(model, loaded.House.Spots, loaded.House.Seats, loaded.Uncertainty, ConfidenceOption.Of(parse, confidence));
            Ranking ranking = Ranking.Of(model, uncertainty.AtConfidence);
            var call = CloseCall.Of(model, ranking, uncertainty, loaded.Uncertainty);
            SpotsPictureFile.Write(invocation, loaded, ranking, uncertainty, call, spots, force);
            LinkBudget weakest = ranking.Scores[0].Weakest;
            bool asJson = parse.GetValue(common.Json);
            if (!asJson)
            {
                WriteDecision(invocation, loaded, ranking, weakest, uncertainty, call);
            }

            MapsDocument maps = new MapMaker(invocation, loaded, model).Make(OrderOfAll(loaded.House, into, force) with { Uncertainty = uncertainty, Confidence = uncertainty.Confidence });
            if (asJson)
            {
                invocation.Output.WriteLine(JsonText.Of(new DemoDocument(
                    into, houseFile, measurements, plan, ComparisonDocument.Of(loaded.House, ranking, [], uncertainty, call).WithCables(RankedRuns.Of(loaded.House, ranking)) with { Picture = spots }, BudgetDocument.Of(loaded.House, weakest, uncertainty), maps)));
            }
            else
            {
                MapsText.Write(maps, loaded.Lengths, invocation.Output, invocation.Width);
                WriteWhatNext(invocation, into, houseFile, measurements, plan, spots);
            }

            return ExitCodes.Done;
        });
        return command;
    }

    private static (LoadedHouse Loaded, int Warnings) ReadDemo(Invocation invocation, MaterialTables tables)
    {
        HouseParseResult parsed = HouseFile.Parse(DemoHouse.Text, "the built-in house", tables);
        ProblemLines.Write(parsed.Problems, invocation.Error, invocation.Width);
        return parsed.House is null
            ? throw new CannotBeDoneException("the built-in house cannot be built from the tables of --materials; omit that option")
            : (HouseLoading.Of(parsed, tables), parsed.WarningCount);
    }

    private static MapOrder OrderOfAll(House house, string folder, bool force) => new(
        house.Spots,
        [.. Enumerable.Range(0, house.Levels.Count)],
        FieldRequest.DefaultCellMetres,
        FieldRequest.SofaHandsMetres,
        folder)
    {
        Force = force,
    };

    private static void WriteDecision(Invocation invocation, LoadedHouse loaded, Ranking ranking, LinkBudget weakest, HouseUncertainty uncertainty, CloseCall call)
    {
        TextWriter output = invocation.Output;
        new ComparisonText(loaded.House, ranking) { Uncertainty = uncertainty, Call = call, Runs = RankedRuns.Of(loaded.House, ranking), Lengths = loaded.Lengths }.Write(output, invocation.Width);
        output.WriteLine();
        WordWrap.Write("The deciding budget: weakest seat of the best spot", output, invocation.Width);
        output.WriteLine();
        new BudgetText(loaded) { Uncertainty = uncertainty }.Write(weakest, output, invocation.Width);
        output.WriteLine();
        output.Flush(); // the maps take a while; the user can read this meanwhile
    }

    private static void WriteWhatNext(Invocation invocation, string folder, string houseFile, string measurements, string plan, string spots)
    {
        TextWriter output = invocation.Output;
        output.WriteLine();
        Tell($"All files are in {folder}. Besides the maps:");
        Item($"{plan}: the plan");
        Item($"{spots}: all seats and spots");
        Item($"{houseFile}: the house file, a starting point for yours");
        Item($"{measurements}: invented measurements, to try 'linkmargin fit'");
        Item($"{Path.Combine(folder, HouseSchema.FileName)}: schema of house files, for editors");
        WordWrap.Write($"Next: 'linkmargin explain {houseFile} --spot SPOT --seat SEAT' explains any other link.", output, invocation.Width);

        void Tell(string text) => WordWrap.Write(text, output, invocation.Width);
        void Item(string text) => WordWrap.WriteHanging(text, output, invocation.Width, "  ", "    ");
    }
}
