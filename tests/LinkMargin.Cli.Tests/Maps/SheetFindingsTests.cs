using System.Globalization;
using System.Text.Json;
using LinkMargin.Cli.Commands;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Tables;
using LinkMargin.Plots.Maps;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Pictures;

namespace LinkMargin.Cli.Tests.Maps;

/// <summary>What maps and the sheet say they found, against what compare prints.</summary>
public sealed class SheetFindingsTests : IDisposable
{
    private readonly ScratchFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData(15, false)]
    [InlineData(60, false)]
    [InlineData(15, true)]
    public void The_sheet_begins_with_the_best_spot_and_says_what_compare_says(double requiredDb, bool showsMedian)
    {
        LoadedHouse loaded = Load(requiredDb);
        JsonElement[] ranking = [.. CommandRun.In(folder.Path, "compare", "house.yaml", "--json").Json.GetProperty("ranking").EnumerateArray()];
        SheetRequest sheet = PicturesOf(loaded, loaded.House.Spots, showsMedian).Pictures.RequestForSheet();

        Assert.Equal(ranking.Select(rank => rank.GetProperty("spot").GetString()!), sheet.Maps.Select(map => map.Field.Spot.Name).Distinct());
        Assert.Equal(ranking.Select(rank => rank.GetProperty("spot").GetString()!), sheet.Verdicts.Select(verdict => verdict.Spot.Name));
        foreach ((JsonElement rank, SheetVerdict verdict) in ranking.Zip(sheet.Verdicts))
        {
            int passing = rank.GetProperty("seatsPassing").GetInt32(), seats = rank.GetProperty("seats").GetInt32();
            Assert.Equal(passing < seats ? $"{passing} of {seats} seats pass" : seats == 2 ? "both seats pass" : $"all {seats} seats pass", verdict.Finding);
            Assert.StartsWith($"weakest: {rank.GetProperty("weakestSeat").GetString()}, ", verdict.Detail, StringComparison.Ordinal);
        }

        string best = sheet.Verdicts[0].Spot.Name;
        Assert.Equal($"{char.ToUpperInvariant(best[0])}{best[1..]}, the best of {ranking.Length} spots: {sheet.Verdicts[0].Finding}", sheet.Title);
    }

    [Fact]
    public void A_sheet_of_one_spot_does_not_call_it_the_best()
    {
        LoadedHouse loaded = Load(15);
        SheetRequest sheet = PicturesOf(loaded, [loaded.House.Spots[1]], showsMedian: false).Pictures.RequestForSheet();

        Assert.Equal($"Loft shelf: {Assert.Single(sheet.Verdicts).Finding}", sheet.Title);
    }

    [Fact]
    public void A_map_says_what_passes_on_its_level_and_how_much_of_the_floor_would_do()
    {
        LoadedHouse loaded = Load(15);
        ((Field Median, Field AtConfidence)[] fields, MapPictures pictures) = PicturesOf(loaded, loaded.House.Spots, showsMedian: false);
        foreach ((Field median, Field atConfidence) in fields)
        {
            MapRequest map = pictures.RequestFor(median, atConfidence);
            int passing = map.Seats.Count(mark => mark.Passes);
            string level = loaded.House.Levels[median.LevelIndex].Name;
            double[] computed = [.. atConfidence.MarginDb.Where(double.IsFinite)];
            string share = (100.0 * computed.Count(margin => margin >= pictures.RequiredDb) / computed.Length).ToString("0", CultureInfo.InvariantCulture);
            Assert.EndsWith($", {share} % of its floor has 15 dB or more", map.Title, StringComparison.Ordinal);
            Assert.Contains(
                (map.Seats.Count, passing) switch
                {
                    (1, _) => $": the seat on level {level} {(passing == 1 ? "passes" : "does not pass")},",
                    (2, 2) => $": both seats on level {level} pass,",
                    _ when passing == map.Seats.Count => $": all {passing} seats on level {level} pass,",
                    _ => $": {passing} of {map.Seats.Count} seats on level {level} pass,",
                },
                map.Title,
                StringComparison.Ordinal);
            Assert.Contains("patches smaller than 0.3 m² with no seat on them are smoothed away", map.Caption, StringComparison.Ordinal);
        }
    }

    private static ((Field Median, Field AtConfidence)[] Fields, MapPictures Pictures) PicturesOf(LoadedHouse loaded, IReadOnlyList<Spot> spots, bool showsMedian)
    {
        var model = new LinkModel(loaded.House);
        (Field, Field)[] fields =
        [
            .. from spot in spots
               from level in Enumerable.Range(0, loaded.House.Levels.Count)
               let plain = FieldComputation.Compute(model, new FieldRequest(spot, level) { CellMetres = 1 })
               select (plain, FieldAtConfidence.Of(model, plain, loaded.Uncertainty, 0.9)),
        ];
        return (fields, new MapPictures(loaded, model, fields, new MapView(spots, 0.9, showsMedian)));
    }

    private LoadedHouse Load(double requiredDb)
    {
        folder.Put("house.yaml", SampleFile.Text.Replace("60 dB", FormattableString.Invariant($"{requiredDb} dB"), StringComparison.Ordinal));
        MaterialTables tables = MaterialTablesFile.ReadBuiltIn().Tables!;
        return HouseLoading.Of(HouseFile.Read(folder.PathOf("house.yaml"), tables), tables);
    }
}
