using LinkMargin.Files.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Resources;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Houses;

/// <summary>The houses that come with the program, read with the tables that come with it.</summary>
public sealed class SampleHousesTests
{
    private static readonly MaterialTables Tables = MaterialTablesFile.ReadBuiltIn().Tables!;

    [Fact]
    public void The_starter_house_reads_clean_and_shows_two_levels()
    {
        HouseParseResult parsed = Read(StarterHouse.Text);
        Assert.Empty(parsed.Problems);
        Assert.Equal(2, parsed.House!.Levels.Count);
        Assert.NotEmpty(parsed.House.Spots);
        Assert.NotEmpty(parsed.House.Seats);
    }

    [Fact]
    public void A_five_room_flat_of_forty_lines_reads_clean()
    {
        HouseParseResult parsed = Read(FlatTests.Flat);
        Assert.Empty(parsed.Problems);
        Assert.Equal(5, parsed.House!.Levels[0].Rooms.Count);
    }

    [Fact]
    public void The_starter_house_begins_with_the_line_by_which_editors_find_the_schema() =>
        Assert.Equal("# yaml-language-server: $schema=./" + HouseSchema.FileName, StarterHouse.Text.Split('\n')[0]);

    [Fact]
    public void The_lines_of_the_starter_house_fit_a_terminal() =>
        Assert.All(StarterHouse.Text.Split('\n'), line => Assert.InRange(line.Length, 0, 130));

    /// <summary>Each line in turn is dropped: the reader ends with a house or a mistake, never with neither or an exception.</summary>
    [Fact]
    public void The_starter_house_with_any_line_missing_gives_a_house_or_mistakes()
    {
        string[] lines = StarterHouse.Text.Split('\n');
        for (int i = 0; i < lines.Length; i++)
        {
            HouseParseResult parsed = Read(string.Join('\n', lines.Where((_, at) => at != i)));
            Assert.Equal(parsed.House is null, parsed.Problems.Any(p => p.Severity == Severity.Error));
        }
    }

    /// <summary>The same for each value in turn, made a word, a huge number, a negative one, a list or nothing.</summary>
    [Theory]
    [InlineData("nonsense")]
    [InlineData("1e30")]
    [InlineData("-3")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("")]
    [InlineData("0")]
    public void The_starter_house_with_any_value_spoilt_gives_a_house_or_mistakes(string spoilt)
    {
        string text = StarterHouse.Text;
        for (int at = text.IndexOf(": ", StringComparison.Ordinal); at >= 0; at = text.IndexOf(": ", at + 1, StringComparison.Ordinal))
        {
            int end = text.IndexOfAny([',', '}', ']', '\n', '#'], at + 2);
            HouseParseResult parsed = Read(text[..(at + 2)] + spoilt + text[end..]);
            Assert.Equal(parsed.House is null, parsed.Problems.Any(p => p.Severity == Severity.Error));
            Assert.All(parsed.Problems, p => Assert.DoesNotContain("NaN", p.Message, StringComparison.Ordinal));
        }
    }

    private static HouseParseResult Read(string text) => HouseFile.Parse(text, "house.yaml", Tables);
}
