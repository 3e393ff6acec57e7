using System.Text.RegularExpressions;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Houses;

/// <summary>What the README says of house files, held to the reader.</summary>
public sealed partial class ReadmeTests
{
    private const string HouseFence = "```yaml house";

    private static readonly string[] Lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "README.md"));

    /// <summary>The rows of the README's table of keys, and the keys that the reader knows there.</summary>
    public static TheoryData<string[], string[]> Rows => new()
    {
        { ["the file"], HouseKeys.House },
        { ["a level"], HouseKeys.Level },
        { ["a room"], HouseKeys.Room },
        { ["any opening", "a door"], HouseKeys.Door },
        { ["any opening", "a window"], HouseKeys.Window },
        { ["any opening", "a gap"], HouseKeys.Gap },
        { ["a wall"], HouseKeys.Wall },
        { ["above"], HouseKeys.Above },
        { ["above"], HouseKeys.Void },
        { ["joists"], HouseKeys.Joists },
        { ["a fixture"], HouseKeys.Fixture },
        { ["radios"], HouseKeys.Radios },
        { ["a radio"], HouseKeys.Radio },
        { ["a spot"], HouseKeys.Spot },
        { ["a seat"], HouseKeys.Seat },
        { ["a zone"], HouseKeys.Zone },
        { ["a keep-out"], HouseKeys.KeepOut },
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
        Assert.Equal(Lines.Count(line => line == "levels:"), Houses().Count());

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_readme_names_every_key_in_its_row(string[] rows, string[] keys)
    {
        string[] written = [.. rows.SelectMany(row => Words().Matches(RowOf(row)).Select(match => match.Groups[1].Value))];
        Assert.Empty(keys.Except(written));
    }

    private static string RowOf(string label) => Lines.Single(line => line.StartsWith($"| {label} |", StringComparison.Ordinal));

    private static IEnumerable<string> Houses()
    {
        for (int i = Array.IndexOf(Lines, HouseFence); i >= 0; i = Array.IndexOf(Lines, HouseFence, i + 1))
        {
            int end = Array.IndexOf(Lines, "```", i + 1);
            yield return string.Join('\n', Lines[(i + 1)..end]);
        }
    }

    [GeneratedRegex("`([a-z-]+)`")]
    private static partial Regex Words();
}
