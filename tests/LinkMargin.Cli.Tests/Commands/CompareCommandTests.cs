using System.Globalization;
using System.Text.Json;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Cli.Tests.Commands;

public sealed class CompareCommandTests : IDisposable
{
    private readonly ScratchFolder folder = new();

    public CompareCommandTests()
    {
        folder.Put("house.yaml", SampleFile.Text);
        folder.Put("modest.yaml", SampleFile.Modest);
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_seat_met_nowhere_ends_with_1_and_all_met_somewhere_with_0()
    {
        CommandRun unmet = Run("compare", "house.yaml"), met = Run("compare", "modest.yaml");

        Assert.Equal(1, unmet.ExitCode);
        Assert.Contains("at every spot: 'bench'.", unmet.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains("margin to count on (dB), reached with 90 % confidence, by seat and spot.", unmet.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains("Median margin (dB) and probability that the seat passes", unmet.Output, StringComparison.Ordinal);
        Assert.True(unmet.Output.Split('\n').Max(line => line.Length) <= 80);
        Assert.Equal(0, met.ExitCode);
        Assert.DoesNotContain("at every spot", met.OutputUnwrapped, StringComparison.Ordinal);
    }

    [Fact]
    public void A_seat_short_at_one_spot_but_met_at_another_still_ends_with_0()
    {
        // The required margin lies between what the two spots give the sofa.
        double[] margins = [.. MarginsOf(Run("compare", "modest.yaml", "--json").Json, "sofa", "marginAtConfidenceDb")];
        double between = margins.Average();
        Assert.True(margins.Max() - margins.Min() > 1);
        folder.Put("between.yaml", SampleFile.Modest.Replace(
            "[3, 2], hands: 0.7, required: 15 dB",
            string.Create(CultureInfo.InvariantCulture, $"[3, 2], hands: 0.7, required: {between:0.00} dB"),
            StringComparison.Ordinal));

        Assert.Equal(0, Run("compare", "between.yaml").ExitCode);
    }

    [Fact]
    public void The_json_holds_the_engines_ranking_and_margins()
    {
        Ranking ranking = AtConfidence(ModelDepth.Full);

        JsonElement root = Run("compare", "house.yaml", "--json").Json;

        Assert.Equal(
            ranking.Scores.Select(s => (s.Spot.Name, s.Weakest.Seat.Name, s.WeakestHeadroomDb, s.SeatsPassing)),
            root.GetProperty("ranking").EnumerateArray().Select(r => (
                r.GetProperty("spot").GetString()!,
                r.GetProperty("weakestSeat").GetString()!,
                r.GetProperty("headroomDb").GetDouble(),
                r.GetProperty("seatsPassing").GetInt32())));
        Assert.Equal(
            ranking.Scores.SelectMany(s => s.Budgets).Select(b => (b.Spot.Name, b.Seat.Name, b.MarginDb)),
            root.GetProperty("links").EnumerateArray().Select(l => (
                l.GetProperty("spot").GetString()!, l.GetProperty("seat").GetString()!, l.GetProperty("tableMedianDb").GetDouble())));
        Assert.Equal(["bench"], root.GetProperty("seatsNeverPassing").EnumerateArray().Select(s => s.GetString()!));
    }

    [Fact]
    public void Two_spots_side_by_side_are_too_close_to_call_and_a_measurement_is_named_that_would_tell()
    {
        folder.Put("twins.yaml", SampleFile.Modest.Replace(
            "  - {name: loft shelf, level: loft, at: [7, 4, 1.5]}", "  - {name: rack below, level: den, at: [0.5, 0.5, 1.0]}", StringComparison.Ordinal));
        JsonElement root = Run("compare", "twins.yaml", "--json").Json, choice = root.GetProperty("choice");
        string second = root.GetProperty("ranking")[1].GetProperty("spot").GetString()!;
        CommandRun text = Run("compare", "twins.yaml");

        Assert.Equal(1, root.GetProperty("ranking").EnumerateArray().Sum(r => r.GetProperty("probabilityBest").GetDouble()), 1e-9);
        Assert.Equal(second, Assert.Single(choice.GetProperty("tooCloseToCall").EnumerateArray()).GetString());
        Assert.InRange(choice.GetProperty("decisiveMeasurement").GetProperty("uncertaintyLeft").GetDouble(), 0.1, 0.99);
        Assert.Contains("Too close to call. Probability of being the best spot: '", text.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains($"The measurement that would separate them best: transmit from '{choice.GetProperty("decisiveMeasurement").GetProperty("transmitter").GetString()}'", text.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains("probably", text.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void With_long_names_and_seats_of_different_use_no_line_is_wider_than_the_page()
    {
        folder.Put("demo.yaml", Files.Resources.DemoHouse.Text);
        Assert.All(Run("compare", "demo.yaml", "--model", "direct").Output.Split('\n'), line => Assert.InRange(line.Length, 0, 80));
    }

    [Fact]
    public void A_clear_call_is_called_clear()
    {
        folder.Put("clear.yaml", SampleFile.Modest.Replace("  - {name: desk, level: loft", "  - {name: desk, level: den", StringComparison.Ordinal));
        JsonElement choice = Run("compare", "clear.yaml", "--json").Json.GetProperty("choice");
        Assert.Empty(choice.GetProperty("tooCloseToCall").EnumerateArray());
        Assert.False(choice.TryGetProperty("decisiveMeasurement", out _));
        Assert.Contains("Probability of being the best spot: 'den rack' ", Run("compare", "clear.yaml").OutputUnwrapped, StringComparison.Ordinal);
    }

    [Fact]
    public void The_picture_is_a_png_that_its_own_kind_alone_may_replace()
    {
        CommandRun first = Run("compare", "house.yaml", "--plot", "spots.png");
        Assert.Contains("spots.png: all seats and spots.", first.OutputUnwrapped, StringComparison.Ordinal);
        PictureFile.AssertSheet(folder.PathOf("spots.png"));
        Assert.Equal("spots.png", Run("compare", "house.yaml", "--plot", "spots.png", "--json").Json.GetProperty("picture").GetString());

        folder.Put("mine.png", "not ours");
        CommandRun refused = Run("compare", "house.yaml", "--plot", "mine.png");
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains("--force", refused.Error, StringComparison.Ordinal);
        Assert.Equal("not ours", File.ReadAllText(folder.PathOf("mine.png")));
    }

    [Fact]
    public void The_model_can_be_chosen()
    {
        Ranking direct = AtConfidence(ModelDepth.Direct);

        JsonElement root = Run("compare", "house.yaml", "--json", "--model", "direct").Json;

        Assert.Equal(direct.Scores[0].WeakestHeadroomDb + direct.Scores[0].Weakest.RequiredDb, root.GetProperty("ranking")[0].GetProperty("marginAtConfidenceDb").GetDouble(), 1e-9);
    }

    [Fact]
    public void Where_probability_and_ranking_part_one_sentence_says_why()
    {
        // In line of sight 13 m and 31 m off, and behind foil of 24 dB, which may be 8 dB more or less, 2.5 m off.
        folder.Put("hall.yaml", """
            house: Long Hall
            units: m
            levels:
              - name: ground
                height: 2.6
                outer: brick-102-plastered
                inner: plasterboard-foil
                rooms:
                  - {name: hall, corner: [0, 0], size: [34, 6]}
                  - {name: closet, corner: [0, 6], size: [3, 3]}
            spots:
              - {name: far shelf, at: [13.5, 3, 0.7]}
              - {name: end shelf, at: [32, 3, 0.7]}
              - {name: closet shelf, at: [1, 7, 0.7]}
            seats:
              - {name: bench, at: [1, 4.5]}
            """);
        CommandRun text = Run("compare", "hall.yaml", "--model", "direct"), json = Run("compare", "hall.yaml", "--model", "direct", "--json");

        JsonElement[] ranked = [.. json.Json.GetProperty("ranking").EnumerateArray()];
        double[] best = [.. ranked.Select(rank => rank.GetProperty("probabilityBest").GetDouble())];
        Assert.Equal(["far shelf", "end shelf", "closet shelf"], ranked.Select(rank => rank.GetProperty("spot").GetString()!));
        Assert.True(best[2] > best[1] && best[0] > 2 * best[2], string.Join(", ", best));
        Assert.Contains(
            $"Probability of being the best spot: 'far shelf' {100 * best[0]:0} %, 'closet shelf' {100 * best[2]:0} %. "
                + $"'closet shelf' ({100 * best[2]:0} %) ranks below 'end shelf' ({100 * best[1]:0} %) by the margin to count on, but its margin is less certain "
                + "or less correlated with the other spots, so it turns out best more often.",
            text.OutputUnwrapped,
            StringComparison.Ordinal);

        // Where probability and ranking agree, nothing more is said.
        folder.Put("two.yaml", File.ReadAllText(folder.PathOf("hall.yaml")).Replace("  - {name: end shelf, at: [32, 3, 0.7]}\n", "", StringComparison.Ordinal));
        Assert.DoesNotContain("comes out best more often", Run("compare", "two.yaml", "--model", "direct").OutputUnwrapped, StringComparison.Ordinal);
    }

    [Fact]
    public void A_margin_a_hair_below_the_required_one_reads_as_below_and_at_it_as_at_it()
    {
        double marginAtConfidenceDb = MarginsOf(Run("compare", "modest.yaml", "--json").Json, "sofa", "marginAtConfidenceDb").First(), tenth = Math.Ceiling(10 * marginAtConfidenceDb) / 10;
        (double RequiredDb, string Cell)[] sides =
        [
            (tenth, FormattableString.Invariant($"{tenth:0.0} ! {tenth - 0.1:0.0}")),
            (tenth - 0.1, FormattableString.Invariant($"{tenth - 0.1:0.0} {tenth - 0.1:0.0}")),
            (marginAtConfidenceDb + 0.0004, FormattableString.Invariant($"{Math.Round(marginAtConfidenceDb + 0.0004, 4)} ! ")),
        ];
        foreach ((double requiredDb, string cell) in sides)
        {
            folder.Put("side.yaml", SampleFile.Modest.Replace(
                "at: [3, 2], hands: 0.7, required: 15 dB", FormattableString.Invariant($"at: [3, 2], hands: 0.7, required: {Math.Round(requiredDb, 4)} dB"), StringComparison.Ordinal));
            Assert.Contains($"sofa den {cell}", Run("compare", "side.yaml").OutputUnwrapped, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Nothing_changes_where_the_decimal_point_is_a_comma()
    {
        string[][] runs =
        [
            ["compare", "house.yaml"],
            ["compare", "house.yaml", "--json"],
            ["explain", "house.yaml", "--spot", "loft shelf", "--seat", "sofa"],
            ["materials", "drywall-stud"],
            ["map", "house.yaml", "--cell", "1.5", "--level", "loft", "--spot", "den rack", "--csv", "--json"],
        ];
        string[] before = [.. runs.Select(words => Run(words).Output)];
        CultureInfo culture = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = GermanFigures();
            Assert.Equal("2,5", 2.5.ToString(CultureInfo.CurrentCulture));
            Assert.Equal(before, runs.Select(words => Run(words).Output));
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }

    [Fact]
    public void The_same_house_in_feet_gets_the_same_comparison()
    {
        // Every length written out in metres; only the unit of bare numbers changes.
        string metres = System.Text.RegularExpressions.Regex.Replace(
            SampleFile.Modest, @"(?<=(height|hands): )[0-9.]+|(?<=(corner|size|at): \[)[^]]+(?=\])", match =>
                string.Join(", ", match.Value.Split(", ").Select(figure => figure + " m")));
        folder.Put("feet.yaml", metres.Replace("units: m", "units: ft", StringComparison.Ordinal));

        Assert.Equal(Run("compare", "modest.yaml").Output, Run("compare", "feet.yaml").Output);
    }

    [Fact]
    public void Tables_of_ones_own_are_used()
    {
        Directory.CreateDirectory(folder.PathOf("tables"));
        string radios = Files.Tables.MaterialTablesFile.BuiltInText("radios.yaml");
        folder.Put("tables/radios.yaml", radios.Replace("transmit: 4 dBm", "transmit: 1 dBm", StringComparison.Ordinal));

        double[] before = [.. MarginsOf(Run("compare", "house.yaml", "--json").Json, "sofa")];
        CommandRun own = Run("compare", "house.yaml", "--json", "--materials", "tables");

        Assert.Equal(before.Select(m => m - 3), MarginsOf(own.Json, "sofa"), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Contains("materials.yaml", own.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_seat_that_plays_one_console_counts_for_its_spot_alone()
    {
        folder.Put("two.yaml", SampleFile.Text.Replace("required: 60 dB", "required: 60 dB, plays: den rack", StringComparison.Ordinal));
        CommandRun one = Run("compare", "house.yaml", "--json"), two = Run("compare", "two.yaml", "--json");

        JsonElement[] shelves = [.. new[] { one, two }.Select(run => run.Json.GetProperty("ranking").EnumerateArray().Single(r => r.GetProperty("spot").GetString() == "loft shelf"))];
        Assert.Equal([3, 2], shelves.Select(r => r.GetProperty("seats").GetInt32()));
        Assert.NotEqual("bench", shelves[1].GetProperty("weakestSeat").GetString());
        Assert.Equal(1, two.ExitCode);
        Assert.Contains("'-': this seat plays another console", Run("compare", "two.yaml").Output, StringComparison.Ordinal);
        Assert.Contains("Consoles in use at the same time, each with the seats that play it: 'den rack': the seat does not pass, the weakest, 'bench', ", Run("compare", "two.yaml").OutputUnwrapped, StringComparison.Ordinal);
        Assert.Equal("den rack", Assert.Single(two.Json.GetProperty("inUse").EnumerateArray()).GetProperty("spot").GetString());
        Assert.Empty(one.Json.GetProperty("inUse").EnumerateArray());
    }

    [Fact]
    public void Several_players_on_a_seat_are_several_links_and_one_seat_to_meet()
    {
        folder.Put("four.yaml", SampleFile.Text
            .Replace("at: [3, 2], hands", "at: [2, 2], players: 4, hands", StringComparison.Ordinal)
            .Replace("required: 20 dB", "required: 1 dB", StringComparison.Ordinal)
            .Replace("required: 15 dB", "required: 1 dB", StringComparison.Ordinal));
        JsonElement root = Run("compare", "four.yaml", "--json").Json;

        Assert.Equal(2 * 6, root.GetProperty("links").GetArrayLength());
        JsonElement first = root.GetProperty("ranking")[0];
        Assert.Equal(3, first.GetProperty("seats").GetInt32());
        Assert.Equal(2, first.GetProperty("seatsPassing").GetInt32());
        Assert.Equal(2.0 / 3, first.GetProperty("passingShare").GetDouble(), 1e-12);
    }

    private static Ranking AtConfidence(ModelDepth depth)
    {
        var model = new LinkModel(SampleFile.HouseOf(SampleFile.Text), depth);
        var basis = new UncertaintyBasis(Files.Tables.MaterialTablesFile.ReadBuiltIn().Tables!.Spreads!);
        return Ranking.Of(model, HouseUncertainty.Of(model, model.House.Spots, model.House.Seats, basis).AtConfidence);
    }

    // Made by hand: with invariant globalisation the real one cannot be had.
    private static CultureInfo GermanFigures()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        culture.NumberFormat.NegativeSign = "\u2212";
        return culture;
    }

    private static IEnumerable<double> MarginsOf(JsonElement comparison, string seat, string which = "tableMedianDb") => comparison.GetProperty("links").EnumerateArray()
        .Where(link => link.GetProperty("seat").GetString() == seat)
        .OrderBy(link => link.GetProperty("spot").GetString(), StringComparer.Ordinal)
        .Select(link => link.GetProperty(which).GetDouble());

    private CommandRun Run(params string[] words) => CommandRun.In(folder.Path, words);
}
