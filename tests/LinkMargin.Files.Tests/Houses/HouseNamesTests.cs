using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Houses;

/// <summary>Every name of a house file is held to the same rules.</summary>
public sealed class HouseNamesTests
{
    private const string Plain = """
        house: NAME-house
        levels:
          - name: NAME-level
            height: 2.4
            outer: brick-102
            inner: drywall-stud
            rooms:
              - {name: "NAME-room", corner: [0, 0], size: [4, 4]}
              - {name: "hall", corner: [4, 0], size: [4, 4]}
            walls: [{name: "NAME-wall", along: [[1, 3], [2, 3]], material: drywall-stud}]
            doors: [{name: "NAME-door", between: ["NAME-room", "hall"], material: door-hollow}]
        fixtures: [{name: "NAME-fixture", level: "NAME-level", box: [5, 1, 6, 2], to: 1, material: cabinet-wood, front: north, open: [front]}]
        spots: [{name: "NAME-spot", inside: "NAME-fixture", height: 0.5}]
        seats: [{name: "NAME-seat", level: "NAME-level", at: [2, 2], facing: "NAME-fixture"}]
        zones: [{name: "NAME-zone", room: "NAME-room", level: "NAME-level", heights: [1.0]}]
        radios: {console: {name: "NAME-radio", transmit: 4 dBm, gain: 0 dBi, sensitivity: -90 dBm}}
        """;

    [Fact]
    public void Each_name_that_reorders_the_text_about_it_is_reported_with_its_place()
    {
        string[] reported = Problems(Quoted(Plain).Replace("NAME", "x\\u202e", StringComparison.Ordinal));
        foreach (string thing in new[] { "house", "level", "room", "wall", "door", "fixture", "spot", "seat", "zone", "radio" })
        {
            Assert.Contains(reported, m => m.Contains($"'x<U+202E>-{thing}' holds U+202E", StringComparison.Ordinal));
        }

        Assert.All(reported, m => Assert.Matches(@"^h\.yaml:\d+:\d+: ", m));
        Assert.DoesNotContain('\u202e', string.Concat(reported));
    }

    [Fact]
    public void Names_are_one_text_however_their_accents_were_typed()
    {
        // Written once composed and once not: the seat still finds its level and fixture.
        string text = Plain.Replace("NAME", "caf\u00e9", StringComparison.Ordinal);
        int last = text.LastIndexOf("caf\u00e9-fixture", StringComparison.Ordinal);
        House house = Read(text[..last] + "cafe\u0301-fixture" + text[(last + "caf\u00e9-fixture".Length)..]).House!;
        Assert.Equal("caf\u00e9-fixture", house.Fixtures[0].Name);
        Assert.NotNull(house.Seats[0].FacingDegrees);
        Assert.Equal("caf\u00e9-house", Read(Plain.Replace("NAME", "cafe\u0301", StringComparison.Ordinal)).House!.Name);
    }

    [Theory]
    [InlineData("\\u200b")]
    [InlineData("\\u00ad")]
    [InlineData("\\u200d")]
    [InlineData("\\ufe0f")]
    [InlineData("\\u2060")]
    public void Two_seats_that_look_the_same_are_reported(string unseen)
    {
        string text = Plain.Replace("NAME", "x", StringComparison.Ordinal)
            .Replace("seats: [", $"seats: [{{name: \"x-{unseen}seat\", level: x-level, at: [1, 1]}}, ", StringComparison.Ordinal);
        Assert.Contains(Problems(text), m => m.Contains("only by invisible characters; give each its own name", StringComparison.Ordinal));
    }

    [Fact]
    public void A_file_of_plain_names_has_no_mistake() => Assert.NotNull(Read(Plain.Replace("NAME", "x", StringComparison.Ordinal)).House);

    // Escapes are read in double quotes only.
    private static string Quoted(string text) =>
        text.Replace("NAME-house", "\"NAME-house\"", StringComparison.Ordinal).Replace("- name: NAME-level", "- name: \"NAME-level\"", StringComparison.Ordinal);

    private static HouseParseResult Read(string text) => HouseFile.Parse(text, "h.yaml", MaterialTablesFile.ReadBuiltIn().Tables!);

    private static string[] Problems(string text) => [.. Read(text).Problems.Select(p => p.ToString())];
}
