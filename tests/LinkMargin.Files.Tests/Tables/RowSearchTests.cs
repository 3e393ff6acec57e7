using LinkMargin.Files.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Resources;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Tables;

/// <summary>Rows found by words of the trade, and the key of a table that holds them.</summary>
public sealed class RowSearchTests : IDisposable
{
    private static readonly MaterialTables Tables = MaterialTablesFile.ReadBuiltIn().Tables!;
    private static readonly RowSearch Search = new(Tables);

    private readonly string folder = Directory.CreateTempSubdirectory("linkmargin-test-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("siding", "timber-frame")]
    [InlineData("cladding", "timber-frame")]
    [InlineData("Tub", "bath")]
    [InlineData("bathtubs", "bath")]
    [InlineData("couch", "sofa")]
    [InlineData("fish tank", "aquarium")]
    [InlineData("closet", "wardrobe")]
    [InlineData("refrigerator", "appliance")]
    [InlineData("cinder block", "block")]
    [InlineData("sheetrock-like partition", null)]
    [InlineData("french door", "door-glazed")]
    [InlineData("dongle", "receiver-usb")]
    [InlineData("attic", "loft-joist-100")]
    [InlineData("tv", "flat-screen")]
    [InlineData("girder", "steel-beam")]
    [InlineData("qwertz", null)]
    [InlineData("", null)]
    [InlineData("- , -", null)]
    public void A_word_of_the_trade_finds_its_row_first(string words, string? first) =>
        Assert.Equal(first, Search.Find(words) is [var best, ..] ? best.Name : null);

    [Fact]
    public void Every_other_word_of_every_row_finds_that_row()
    {
        Assert.InRange(Tables.Also.Count, 140, int.MaxValue);
        Assert.All(Tables.Also, row => Assert.All(row.Value, word => Assert.Contains(Search.Find(word), found => found.Name == row.Key)));
    }

    [Fact]
    public void Every_name_finds_itself_first() =>
        Assert.All(
            Tables.Materials.Keys.Concat(Tables.BuildUps.Keys).Concat(Tables.Radios.Keys),
            name => Assert.Contains(Search.Find(name).Take(2), found => found.Name == name));

    [Fact]
    public void Every_material_has_a_kind_and_no_kind_is_called_as_a_row() =>
        Assert.All(Tables.Materials.Keys, name =>
        {
            Assert.NotEqual(MaterialTables.OtherMaterials, Tables.KindOf(name));
            Assert.False(Tables.Materials.ContainsKey(Tables.KindOf(name)));
        });

    [Fact]
    public void A_table_without_kinds_and_other_words_still_reads()
    {
        MaterialTablesResult result = Read("");

        Assert.DoesNotContain(result.Problems, p => p.Severity == Severity.Error);
        Assert.Empty(result.Tables!.AlsoOf("fence"));
        Assert.Equal(MaterialTables.OtherMaterials, result.Tables.KindOf("fence"));
    }

    [Theory]
    [InlineData("also: hurdle", "also: a list is needed (items that begin with '- ', or [ ... ]), not 'hurdle'")]
    [InlineData("also: [[a]]", "also: a word or text is needed, not a list")]
    [InlineData("kind: My Walls", "kind: 'My Walls' is not one word of lower-case letters, digits and hyphens; write, for example, 'my-walls'")]
    public void What_is_wrong_in_the_words_of_a_row_is_reported(string line, string fault) =>
        Assert.Contains(Read(line).Problems, p => p.Severity == Severity.Error && p.Message == fault);

    [Theory]
    [InlineData(TableLimits.MostAlso, true)]
    [InlineData(TableLimits.MostAlso + 1, false)]
    public void A_row_has_so_many_other_words_at_most(int count, bool isRight) =>
        Assert.Equal(isRight, Read($"also: [{string.Join(", ", Enumerable.Range(0, count).Select(i => $"w{i}"))}]").Tables is not null);

    [Fact]
    public void A_house_file_that_says_a_word_of_the_trade_is_reported_the_rows_it_may_mean()
    {
        HouseParseResult parsed = HouseFile.Parse(StarterHouse.Text.Replace("inner: drywall-stud", "inner: partition", StringComparison.Ordinal), "house.yaml", Tables);

        Assert.Contains(parsed.Problems, p => p.Message.StartsWith("inner: 'partition' is not in the material table; did you mean 'drywall-stud' or ", StringComparison.Ordinal));
    }

    private MaterialTablesResult Read(string line)
    {
        File.WriteAllText(Path.Combine(folder, "materials.yaml"), $"""
            materials:
              - name: fence
                what: woven panel
                {line}
                loss: 1 dB
                spread: 1 dB
                source: from memory

            """);
        return MaterialTablesFile.ReadFolder(folder);
    }
}
