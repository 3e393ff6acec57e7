using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Resources;
using LinkMargin.Files.Tables;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tests.Houses;

public sealed class HouseSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(HouseSchema.Text);

    public static TheoryData<string, string[]> Groups => new()
    {
        { "level", HouseKeys.Level },
        { "room", HouseKeys.Room },
        { "door", HouseKeys.Door },
        { "window", HouseKeys.Window },
        { "gap", HouseKeys.Gap },
        { "wall", HouseKeys.Wall },
        { "above", HouseKeys.Above },
        { "joists", HouseKeys.Joists },
        { "void", HouseKeys.Void },
        { "fixture", HouseKeys.Fixture },
        { "radios", HouseKeys.Radios },
        { "radio", HouseKeys.Radio },
        { "spot", HouseKeys.Spot },
        { "spotLead", HouseKeys.SpotLead },
        { "seat", HouseKeys.Seat },
        { "zone", HouseKeys.Zone },
        { "keepOut", HouseKeys.KeepOut },
    };

    [Theory]
    [MemberData(nameof(Groups))]
    public void The_schema_and_the_reader_know_the_same_keys(string group, string[] keys)
    {
        JsonObject definition = Root["$defs"]![group]!.AsObject();
        Assert.Equal(keys.Order(StringComparer.Ordinal), definition["properties"]!.AsObject().Select(p => p.Key).Order(StringComparer.Ordinal));
        Assert.False(definition["additionalProperties"]!.GetValue<bool>());
    }

    [Fact]
    public void The_schema_and_the_reader_know_the_same_keys_at_the_top() =>
        Assert.Equal(HouseKeys.House.Order(StringComparer.Ordinal), Root["properties"]!.AsObject().Select(p => p.Key).Order(StringComparer.Ordinal));

    [Fact]
    public void Every_key_is_described_with_an_example_where_it_is_not_a_group()
    {
        List<string> silent = [];
        foreach ((string group, JsonObject properties) in AllProperties())
        {
            foreach ((string key, JsonNode? value) in properties)
            {
                JsonObject written = value!.AsObject();
                JsonObject referred = written["$ref"] is { } to ? Root["$defs"]![to.GetValue<string>().Split('/')[^1]]!.AsObject() : [];
                bool Has(string word) => written.ContainsKey(word) || referred.ContainsKey(word);
                if (!(Has("description") || key == "name") || !(Has("examples") || Has("enum") || Has("default") || Has("properties") || Has("items") || Has("description")))
                {
                    silent.Add($"{group}.{key}");
                }
            }
        }

        Assert.Empty(silent);
    }

    [Fact]
    public void The_schema_tells_the_ranges_that_the_reader_checks()
    {
        (string Path, object Range)[] reported =
        [
            ("level.height", HouseLimits.LevelHeight),
            ("room.size", HouseLimits.RoomSide),
            ("door.width", HouseLimits.OpeningWidth),
            ("window.width", HouseLimits.OpeningWidth),
            ("gap.width", HouseLimits.OpeningWidth),
            ("joists.spacing", HouseLimits.JoistSpacing),
            ("radio.transmit", TableLimits.Transmit),
            ("radio.gain", TableLimits.Gain),
            ("radio.sensitivity", TableLimits.Sensitivity),
            ("radio.hand", TableLimits.Hand),
            ("radio.spread", TableLimits.Spread),
            ("seat.required", HouseLimits.Required),
            ("seat.used", HouseLimits.UsedDays),
            ("seat.players", HouseLimits.Players),
        ];
        Assert.All(reported, t => Assert.Contains(t.Range.ToString()!, Property(t.Path)["description"]!.GetValue<string>(), StringComparison.Ordinal));
        Assert.Contains(HouseLimits.Required.ToString(), Root["properties"]!["required"]!["description"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Contains(HouseLimits.Angle.ToString(), Root["$defs"]!["degrees"]!["description"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_schema_tells_the_defaults_and_the_longest_lists_that_the_reader_has()
    {
        Assert.Equal(HouseLimits.DoorWidth, Property("door.width")["default"]!.GetValue<double>());
        Assert.Equal(HouseLimits.DoorHeight, Property("door.height")["default"]!.GetValue<double>());
        Assert.Equal(HouseLimits.WindowSill, Property("window.sill")["default"]!.GetValue<double>());
        Assert.Equal(HouseLimits.WindowHeight, Property("window.height")["default"]!.GetValue<double>());
        Assert.Equal(HouseLimits.Hands, Property("seat.hands")["default"]!.GetValue<double>());
        Assert.Contains(
            FormattableString.Invariant($"If absent: {HouseLimits.RequiredDb} dB"), Root["properties"]!["required"]!["description"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Contains(
            FormattableString.Invariant($"If absent: {HouseLimits.RadioSpreadDb} dB"), Property("radio.spread")["description"]!.GetValue<string>(), StringComparison.Ordinal);
        (string Key, int Most)[] lists =
        [
            ("levels", HouseLimits.MostLevels),
            ("fixtures", HouseLimits.MostFixtures),
            ("spots", HouseLimits.MostSpots),
            ("seats", HouseLimits.MostSeats),
            ("zones", HouseLimits.MostZones),
            ("keep-out", HouseLimits.MostZones),
        ];
        Assert.All(lists, list => Assert.Equal(list.Most, Root["properties"]![list.Key]!["maxItems"]!.GetValue<int>()));
        Assert.Equal(ValueReader.LongestName, Root["$defs"]!["name"]!["maxLength"]!.GetValue<int>());
    }

    [Fact]
    public void Files_that_read_well_are_valid()
    {
        Assert.True(IsValid(HouseText.Good));
        Assert.True(IsValid(StarterHouse.Text));
        Assert.True(IsValid(DemoHouse.Text));
        Assert.True(IsValid(FlatTests.Flat));
    }

    [Theory]
    [InlineData("units: m", "unit: m")]
    [InlineData("units: m", "units: yards")]
    [InlineData("name: den,", "nam: den,")]
    [InlineData("material: leaf, open: true", "materiel: leaf, open: true")]
    [InlineData("between: [den, hall]", "between: [den, hall], room: den, side: west")]
    [InlineData("between: [den, hall], ", "")]
    [InlineData("corner: [0, 0], size: [4, 5]", "corner: [0, 0]")]
    [InlineData("corner: [0, 0], size: [4, 5]", "corner: [0, 0], size: [4, 5], outline: [[0, 0], [1, 0], [1, 1]]")]
    [InlineData("height: 2.4", "height: tall")]
    [InlineData("open: [front]", "open: [font]")]
    [InlineData("open: [front]", "sides: {font: none}")]
    [InlineData("open: [front]", "sides: {front: 3}")]
    [InlineData(", hand: 6 dB", "")]
    [InlineData("inside: rack, height: 1.1", "inside: rack")]
    [InlineData("hands: 0.9", "hand: 0.9")]
    [InlineData("run: x", "run: z")]
    [InlineData("hands: 0.9,", "used: often,")]
    [InlineData("hands: 0.9,", "used: 32,")]
    [InlineData("hands: 0.9,", "players: 2.5,")]
    [InlineData("hands: 0.9,", "players: [[1, 1], [2, 1]],")]
    [InlineData("heights: [0.5, 1.2]", "heights: []")]
    [InlineData("room: loft, heights: [0.5, 1.2]", "heights: [0.5, 1.2]")]
    [InlineData("room: hall}", "room: hall, corner: [0, 0], size: [1, 1]}")]
    public void Files_with_a_mistake_that_a_schema_can_see_are_not_valid(string from, string to)
    {
        Assert.Contains(from, HouseText.Good, StringComparison.Ordinal);
        Assert.False(IsValid(HouseText.Good.Replace(from, to, StringComparison.Ordinal)));
    }

    private static JsonNode Root => JsonNode.Parse(HouseSchema.Text)!;

    private static JsonNode Property(string path) => Root["$defs"]![path.Split('.')[0]]!["properties"]![path.Split('.')[1]]!;

    private static IEnumerable<(string Group, JsonObject Properties)> AllProperties() =>
        Root["$defs"]!.AsObject()
            .Where(d => d.Value!["properties"] is not null)
            .Select(d => (d.Key, d.Value!["properties"]!.AsObject()))
            .Prepend(("house", Root["properties"]!.AsObject()));

    private static bool IsValid(string yaml)
    {
        List<Problem> problems = [];
        MappingNode root = YamlTree.ParseMapping(yaml, new Source("f", problems))!;
        Assert.Empty(problems);
        return Schema.Evaluate(JsonSerializer.SerializeToElement(ToJson(root))).IsValid;
    }

    /// <summary>As an editor sees it: YAML 1.2's core rules for what is a number and what is a flag.</summary>
    private static JsonNode? ToJson(Node node) => node switch
    {
        MappingNode mapping => new JsonObject(mapping.Entries.Select(e => KeyValuePair.Create(e.Key, ToJson(e.Value)))),
        SequenceNode list => new JsonArray([.. list.Items.Select(ToJson)]),
        ScalarNode { IsNull: true } => null,
        ScalarNode { IsQuoted: false, Text: "true" } => true,
        ScalarNode { IsQuoted: false, Text: "false" } => false,
        ScalarNode { IsQuoted: false } scalar when double.TryParse(
            scalar.Text, System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out double number) => number,
        ScalarNode scalar => scalar.Text,
        _ => throw new InvalidOperationException(),
    };
}
