using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Resources;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Houses;

/// <summary>What the README and the guide say of house files, checked against the reader.</summary>
public sealed partial class ReadmeTests
{
    private const string HouseFence = "```yaml house";

    private static readonly string[] Readme = LinesOf("README.md"), Guide = LinesOf("house-file.md");

    /// <summary>The headings of the guide's tables of keys, and the keys that the reader knows there.</summary>
    public static TheoryData<string, string[]> Tables => new()
    {
        { "The file", HouseKeys.House },
        { "A level", HouseKeys.Level },
        { "A room", HouseKeys.Room },
        { "A door", HouseKeys.Door },
        { "A window", HouseKeys.Window },
        { "A gap", HouseKeys.Gap },
        { "A wall", HouseKeys.Wall },
        { "A floor above", HouseKeys.Above },
        { "A void", HouseKeys.Void },
        { "Joists", HouseKeys.Joists },
        { "A fixture", HouseKeys.Fixture },
        { "Radios", HouseKeys.Radios },
        { "A radio written out", HouseKeys.Radio },
        { "A spot", HouseKeys.Spot },
        { "A lead", HouseKeys.SpotLead },
        { "A seat", HouseKeys.Seat },
        { "A zone", HouseKeys.Zone },
        { "A keep-out", HouseKeys.KeepOut },
        { "A display", HouseKeys.Display },
        { "A device", HouseKeys.Device },
        { "A passage", HouseKeys.Passage },
        { "A cable", HouseKeys.PulledCable },
    };

    [Fact]
    public void Every_house_in_the_readme_reads_clean_and_can_be_compared()
    {
        MaterialTables tables = MaterialTablesFile.ReadBuiltIn().Tables!;
        string[] houses = [.. Houses()];
        Assert.NotEmpty(houses);
        Assert.All(houses, text =>
        {
            HouseParseResult parsed = HouseFile.Parse(text, "README.md", tables);
            Assert.Empty(parsed.Problems);
            Assert.NotEmpty(parsed.House!.Spots);
            Assert.NotEmpty(parsed.House.Seats);
        });
    }

    /// <summary>A block that begins like a house file but lacks the mark would go untested.</summary>
    [Fact]
    public void Every_block_with_levels_is_marked_as_a_house() =>
        Assert.Equal(Readme.Count(line => line == "levels:"), Houses().Count());

    [Theory]
    [MemberData(nameof(Tables))]
    public void The_guide_lists_the_keys_and_no_others(string heading, string[] keys)
    {
        IEnumerable<string> section = Guide.SkipWhile(line => line != $"### {heading}").Skip(1).TakeWhile(line => !line.StartsWith('#'));
        string[] written = [.. section.SelectMany(line => Words().Matches(FirstCell().Match(line).Value).Select(match => match.Groups[1].Value))];
        Assert.Equal(keys.Order(StringComparer.Ordinal), written.Order(StringComparer.Ordinal));
    }

    /// <summary>The schema says which keys a group must have and what stands for one that is left out; so must the guide.</summary>
    [Theory]
    [MemberData(nameof(Tables))]
    public void The_guide_says_what_a_missing_key_means(string heading, string[] keys)
    {
        JsonNode group = SchemaGroups().Single(known => known.AsObject()["properties"]!.AsObject().Select(key => key.Key).Order(StringComparer.Ordinal).SequenceEqual(keys.Order(StringComparer.Ordinal)));
        string[] required = [.. (group["required"]?.AsArray() ?? []).Select(key => key!.GetValue<string>())];
        foreach (string row in Guide.SkipWhile(line => line != $"### {heading}").Skip(1).TakeWhile(line => !line.StartsWith('#')).Where(line => line.StartsWith("| `", StringComparison.Ordinal)))
        {
            string missing = row.Trim('|').Split('|')[^1].Trim();
            foreach (string key in Words().Matches(FirstCell().Match(row).Value).Select(match => match.Groups[1].Value))
            {
                // A void may be a list of corners instead, which the schema says in another place.
                Assert.Equal(required.Contains(key) && heading != "A void", missing.Length == 0);
                if (!missing.StartsWith("as for ", StringComparison.Ordinal) && group["properties"]![key]!["default"] is { } value)
                {
                    string text = value.ToJsonString().Trim('"');
                    Assert.Matches($@"^`?{Regex.Escape(text.EndsWith(".0", StringComparison.Ordinal) ? text[..^2] : text)}\b", missing);
                }
            }
        }
    }

    private static IEnumerable<JsonNode> SchemaGroups()
    {
        JsonNode root = JsonNode.Parse(HouseSchema.Text)!;
        return [root, .. root["$defs"]!.AsObject().Select(definition => definition.Value!).Where(definition => definition["properties"] is not null)];
    }

    private static string[] LinesOf(string name) => File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "documents", name));

    private static IEnumerable<string> Houses()
    {
        for (int i = Array.IndexOf(Readme, HouseFence); i >= 0; i = Array.IndexOf(Readme, HouseFence, i + 1))
        {
            int end = Array.IndexOf(Readme, "```", i + 1);
            yield return string.Join('\n', Readme[(i + 1)..end]);
        }
    }

    [GeneratedRegex("`([a-z-]+)`")]
    private static partial Regex Words();

    [GeneratedRegex("^\\| `[^|]*\\|")]
    private static partial Regex FirstCell();
}
