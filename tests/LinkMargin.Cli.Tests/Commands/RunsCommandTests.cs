using System.Text.Json;
using LinkMargin.Files.Writing;

namespace LinkMargin.Cli.Tests.Commands;

/// <summary>The command <c>runs</c>: the table, the pull sheet, JSON, CSV, and what it refuses.</summary>
public sealed class RunsCommandTests : IDisposable
{
    private const string Cabled =
        """
        fixtures: [{name: panel, level: den, box: [3, 0.05, 3.9, 0.1], from: 0.8, to: 1.6, material: flat-screen}]
        displays: [{name: screen, level: den, at: [3.5, 0.2, 1], signal: 4k120 4:4:4 12 bit}]
        passages: [{name: chase, from: [3.9, 2.5], levels: [den, loft], bore: 35 mm}]
        cables: [{name: old, from: screen, to: den rack, kind: hdmi-optical, length: 15 m}]

        """;

    private readonly ScratchFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void The_table_has_a_row_for_each_spot()
    {
        CommandRun run = Run(SampleFile.Modest + Cabled);
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("den rack", run.Output, StringComparison.Ordinal);
        Assert.Contains("loft shelf", run.Output, StringComparison.Ordinal);
        Assert.Contains("local codes", run.Output, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n'), line => Assert.InRange(line.Length, 0, 80));
    }

    [Fact]
    public void The_pull_sheet_names_route_length_cable_and_what_runs_the_wrong_way()
    {
        string text = Unwrapped(Run(SampleFile.Modest + Cabled, "--spot", "den rack").Output);
        Assert.Contains("den rack -> screen: new run: hdmi-optical", text, StringComparison.Ordinal);
        Assert.Contains("'old' goes from 'screen' to 'den rack' and is directional; a run back is needed", text, StringComparison.Ordinal);
        Assert.Contains("48.11 Gbit/s on the line", text, StringComparison.Ordinal);
        Assert.Contains("borderline", text, StringComparison.Ordinal);
        Assert.Contains("along the route +", text, StringComparison.Ordinal);
        string loft = Unwrapped(Run(SampleFile.Modest + Cabled, "--spot", "loft shelf").Output);
        Assert.Contains("through the passage 'chase'", loft, StringComparison.Ordinal);
        Assert.Contains("0 holes to bore", loft, StringComparison.Ordinal);
        foreach (string caution in new[] { "test it with the picture", "arrow", "pull string", "mains", "ladders", "licensed" })
        {
            Assert.Contains(caution, loft, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void In_a_house_in_feet_lengths_are_in_feet()
    {
        string text = Run(SampleFile.Modest.Replace("units: m", "units: ft", StringComparison.Ordinal).Replace("height: 2.4", "height: 8", StringComparison.Ordinal).Replace("height: 2.3", "height: 8", StringComparison.Ordinal) + Cabled, "--spot", "loft shelf").Output;
        Assert.DoesNotMatch(@"\d m\b along", text);
        Assert.Matches(@"\dft \d+in along the route", Unwrapped(text));
    }

    [Fact]
    public void Json_and_csv_carry_the_same_figures()
    {
        JsonElement json = Run(SampleFile.Modest + Cabled, "--json").Json;
        Assert.Equal("linkmargin/runs/1", json.GetProperty("form").GetString());
        JsonElement[] runs = [.. json.GetProperty("spots").EnumerateArray().SelectMany(spot => spot.GetProperty("runs").EnumerateArray())];
        string[] rows = Run(SampleFile.Modest + Cabled, "--csv").Output.TrimEnd('\n').Split('\n');
        Assert.Equal(string.Join(',', RunsCsv.Headings), rows[0]);
        Assert.Equal(runs.Length, rows.Length - 1);
        Assert.Equal(
            runs.Select(run => run.GetProperty("buyM").GetDouble().ToString("0.00", System.Globalization.CultureInfo.InvariantCulture)),
            rows.Skip(1).Select(row => row.Split(',')[RunsCsv.Headings.ToList().IndexOf("buyM")]));
        double legs = runs[0].GetProperty("route").EnumerateArray().Sum(leg => leg.GetProperty("lengthM").GetDouble());
        Assert.Equal(legs, runs[0].GetProperty("routeM").GetDouble(), 1e-9);
    }

    /// <summary>A pulling head of 10 x 6 mm is 11.7 mm across: it passes a bore of 12 mm, but not beside a cable of 7 mm, and no bore of 11 mm.</summary>
    [Theory]
    [InlineData("bore: 12 mm", 0, "through the passage 'chase'")]
    [InlineData("bore: 12 mm, holds: [coaxial]", 1, "does not pass beside them")]
    [InlineData("bore: 11 mm, holds: [coaxial]", 0, "a hole in the ceiling of 'den'")]
    public void A_passage_that_is_too_narrow_is_said_or_gone_round(string bore, int exitCode, string part)
    {
        CommandRun run = Run(SampleFile.Modest + Cabled.Replace("bore: 35 mm", bore, StringComparison.Ordinal), "--spot", "loft shelf");
        Assert.Equal(exitCode, run.ExitCode);
        Assert.Contains(part, Unwrapped(run.Output), StringComparison.Ordinal);
    }

    /// <summary>Each hole to bore has its room and its place on the plan: that of the leg in JSON, half way through it.</summary>
    [Fact]
    public void A_hole_is_said_with_its_place_on_the_plan()
    {
        string house = SampleFile.Modest + Cabled.Replace("bore: 35 mm", "bore: 11 mm", StringComparison.Ordinal);
        string text = Unwrapped(Run(house, "--spot", "loft shelf").Output);
        JsonElement run = Run(house, "--spot", "loft shelf", "--json").Json.GetProperty("spots")[0].GetProperty("runs")[0];
        JsonElement[] holes = [.. run.GetProperty("route").EnumerateArray().Where(leg => leg.GetProperty("holes").GetInt32() == 1)];
        Assert.NotEmpty(holes);
        foreach (JsonElement hole in holes)
        {
            (double east, double north) = (Middle(hole, 0), Middle(hole, 1));
            Assert.Matches(
                string.Create(System.Globalization.CultureInfo.InvariantCulture, $@"a hole (in|through) the (ceiling|floor|wall) (of )?'{hole.GetProperty("where").GetString()}'[^.]* '[a-z ]+',[a-z ]* at \({east:0.00}, {north:0.00}\)"),
                text);
        }

        Assert.Contains("In brackets: how far east and how far north, in metres, as on the plan.", text, StringComparison.Ordinal);
        string feet = Run(house.Replace("units: m", "units: ft", StringComparison.Ordinal).Replace("height: 2.4", "height: 8", StringComparison.Ordinal).Replace("height: 2.3", "height: 8", StringComparison.Ordinal), "--spot", "loft shelf").Output;
        Assert.Matches(@"a hole .* at \(\d+ft \d+in, \d+ft \d+in\)", Unwrapped(feet));
        Assert.Contains("how far north, as on the plan", Unwrapped(feet), StringComparison.Ordinal);

        static double Middle(JsonElement leg, int axis) => (leg.GetProperty("fromM")[axis].GetDouble() + leg.GetProperty("toM")[axis].GetDouble()) / 2;
    }

    [Fact]
    public void Bends_are_summed_with_the_stretches_to_pull_in()
    {
        string text = Unwrapped(Run(SampleFile.Modest + Cabled, "--spot", "loft shelf").Output);
        Assert.Matches(@"\d+ bends, \d+° in all, none tighter than 30 mm radius: pull", text);
        Assert.Contains("friction at the bends multiplies the pull by about", text, StringComparison.Ordinal);
        JsonElement run = Run(SampleFile.Modest + Cabled, "--spot", "loft shelf", "--json").Json.GetProperty("spots")[0].GetProperty("runs")[0];
        Assert.True(run.GetProperty("cornerDegrees").GetDouble() >= 30 * run.GetProperty("corners").GetInt32());
        Assert.True(run.GetProperty("stretches").GetInt32() >= Math.Ceiling((run.GetProperty("cornerDegrees").GetDouble() - 0.5) / 450)); // the bend at a place to pull from is gone
    }

    [Fact]
    public void A_display_that_nothing_leads_to_says_what_is_missing()
    {
        string house = SampleFile.Modest.Replace(
            "{name: passage, corner: [4, 0], size: [4, 5]}", "{name: passage, corner: [4, 0], size: [4, 5]}\n      - {name: shed, corner: [20, 0], size: [3, 3]}", StringComparison.Ordinal);
        string inShed = Cabled.Replace("at: [3.5, 0.2, 1]", "at: [21, 1, 1]", StringComparison.Ordinal).Replace("length: 15 m", "length: 95 m", StringComparison.Ordinal);
        CommandRun run = Run(house + inShed, "--spot", "den rack");
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("no route found: no wall joins the rooms on the way; describe a passage under 'passages'", Unwrapped(run.Output), StringComparison.Ordinal);
    }

    [Fact]
    public void The_lead_of_a_radio_is_a_run_too()
    {
        string house = SampleFile.Modest.Replace("at: [0.5, 0.5, 1.1]", "at: [0.5, 0.5, 1.1], lead: {length: 3 m, to: [0.2, 1.2, 1.9]}", StringComparison.Ordinal);
        Assert.NotEqual(SampleFile.Modest, house);
        string text = Unwrapped(Run(house + Cabled, "--spot", "den rack").Output);
        Assert.Contains("The radio is on a lead of 3.00 m: usb-2, lead for a receiver or a controller, passive.", text, StringComparison.Ordinal);
        Assert.Contains("Along the walls it takes", text, StringComparison.Ordinal);
        JsonElement lead = Run(house + Cabled, "--spot", "den rack", "--json").Json.GetProperty("spots")[0].GetProperty("lead");
        Assert.Equal(3, lead.GetProperty("lengthM").GetDouble());
    }

    [Fact]
    public void The_new_runs_are_drawn_on_plan_and_section()
    {
        CommandRun run = Run(SampleFile.Modest + Cabled, "--spot", "loft shelf", "--plot", "runs.png");
        Assert.Equal(0, run.ExitCode);
        byte[] with = File.ReadAllBytes(folder.PathOf("runs.png"));
        CommandRun.In(folder.Path, "check", "h.yaml");
        byte[] plan = File.ReadAllBytes(folder.PathOf("h-plan.png"));
        Assert.NotEqual(plan, with);
        Assert.InRange(HeightOf(with) - HeightOf(plan), 300, 3000); // the section below
        Assert.Equal(2, Run(SampleFile.Modest + Cabled, "--plot", "runs.png").ExitCode);
    }

    /// <summary>A splitter and a processor in the rack, so that the cables to both inputs of the display take one route.</summary>
    [Fact]
    public void A_route_that_stands_above_is_not_printed_again()
    {
        const string Twice =
            """
            displays: [{name: screen, level: den, at: [3.5, 0.2, 1], inputs: [processed, direct]}]
            devices:
              - {name: processor, level: den, at: [0.5, 0.5, 1.1], role: processor}
              - {name: splitter, level: den, at: [0.5, 0.5, 1.1], inputs: 1, outputs: 2}

            """;
        string[] lines = Run(SampleFile.Modest + Twice, "--spot", "den rack").Output.Split('\n');
        Assert.Single(lines, line => line.Contains("along the wall at the floor, in 'games den'", StringComparison.Ordinal));
        Assert.Single(lines, "    - the same route as R1");
    }

    [Fact]
    public void What_is_only_borderline_is_said_at_the_top() =>
        Assert.Contains("Borderline for the picture: R1; test before you pull.", Unwrapped(Run(SampleFile.Modest + Cabled, "--spot", "den rack").Output), StringComparison.Ordinal);

    [Fact]
    public void Without_displays_there_is_nothing_to_plan()
    {
        CommandRun run = Run(SampleFile.Modest);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("describes no displays", run.Error, StringComparison.Ordinal);
        Assert.Equal(2, Run(SampleFile.Modest + Cabled, "--json", "--csv").ExitCode);
        Assert.Contains("did you mean", Run(SampleFile.Modest + Cabled, "--spot", "den rak").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Compare_and_place_show_what_each_spot_costs_in_cable()
    {
        folder.Put("h.yaml", SampleFile.Modest + Cabled);
        CommandRun compare = CommandRun.In(folder.Path, "compare", "h.yaml", "--model", "direct");
        Assert.Contains("Video cables that each spot needs", compare.Output, StringComparison.Ordinal);
        JsonElement json = CommandRun.In(folder.Path, "compare", "h.yaml", "--model", "direct", "--json").Json;
        JsonElement runs = Run(SampleFile.Modest + Cabled, "--json").Json;
        foreach (JsonElement spot in runs.GetProperty("spots").EnumerateArray())
        {
            JsonElement cables = json.GetProperty("ranking").EnumerateArray().Single(rank => rank.GetProperty("spot").GetString() == spot.GetProperty("spot").GetString()).GetProperty("cables");
            Assert.Equal(spot.GetProperty("newRuns").GetInt32(), cables.GetProperty("newRuns").GetInt32());
            Assert.Equal(spot.GetProperty("buyM").GetDouble(), cables.GetProperty("buyM").GetDouble());
        }

        Assert.True(CommandRun.In(folder.Path, "place", "h.yaml", "--model", "direct", "--grid", "1", "--json").Json.GetProperty("places")[0].TryGetProperty("cables", out _));
        folder.Put("h.yaml", SampleFile.Modest);
        Assert.DoesNotContain("Video cables", CommandRun.In(folder.Path, "compare", "h.yaml", "--model", "direct").Output, StringComparison.Ordinal);
    }

    private CommandRun Run(string house, params string[] words) => CommandRun.In(folder.Path, ["runs", folder.Put("h.yaml", house), .. words]);

    // Of a PNG, from its header.
    private static int HeightOf(byte[] png) => System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20, 4));

    private static string Unwrapped(string text) => System.Text.RegularExpressions.Regex.Replace(text, @"\s+", " ");
}
