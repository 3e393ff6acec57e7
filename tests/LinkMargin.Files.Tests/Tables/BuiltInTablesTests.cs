using System.Globalization;
using System.Text.RegularExpressions;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Tables;

public sealed partial class BuiltInTablesTests
{
    private const string Kebab = "^[a-z0-9]+(-[a-z0-9]+)*$";

    private static readonly MaterialTablesResult Result = MaterialTablesFile.ReadBuiltIn();

    private static MaterialTables Tables => Result.Tables!;

    /// <summary>What a house is made of and what stands in it, each with the row that is it.</summary>
    public static TheoryData<string, string> Wanted { get; } = new()
    {
        { "stud wall", "drywall-stud" },
        { "stud wall, double board", "drywall-double" },
        { "stud wall, insulated", "drywall-stud-insulated" },
        { "plaster on timber lath", "plaster-timber-lath" },
        { "plaster on metal lath", "plaster-metal-lath" },
        { "brick", "brick-102" },
        { "brick, thicker", "brick-215" },
        { "brick cavity", "brick-cavity" },
        { "block", "blockwork-100" },
        { "block cavity", "block-cavity" },
        { "concrete, cast", "concrete-150" },
        { "concrete, reinforced", "concrete-reinforced-200" },
        { "stone", "stone-450" },
        { "log wall", "timber-log-200" },
        { "door, hollow", "door-hollow" },
        { "door, solid", "door-solid" },
        { "door, glazed", "door-glazed" },
        { "door, steel", "door-steel" },
        { "glass, single", "glass-single" },
        { "glass, double", "glass-double" },
        { "glass, coated", "glass-coated" },
        { "ceiling board", "plasterboard-12" },
        { "chipboard", "chipboard-22" },
        { "plywood", "plywood-18" },
        { "strand board", "osb-15" },
        { "floorboard", "floorboard-20" },
        { "screed with foil", "screed-foil" },
        { "screed", "screed-65" },
        { "tile", "tile-ceramic" },
        { "carpet", "carpet" },
        { "foil-faced insulation", "insulation-foil" },
        { "foil-backed board", "plasterboard-foil" },
        { "sheet steel", "sheet-steel" },
        { "perforated steel", "perforated-steel" },
        { "mesh", "mesh" },
        { "mirror", "mirror" },
        { "flat screen", "flat-screen" },
        { "bookcase", "bookcase" },
        { "cabinet wood", "cabinet-wood" },
        { "aquarium", "aquarium" },
        { "radiator", "radiator" },
        { "duct", "duct" },
        { "chimney breast", "chimney-breast" },
        { "bath", "bath" },
        { "person", "person" },
        { "timber", "timber" },
    };

    [Fact]
    public void Read_without_a_word() => Assert.Empty(Result.Problems);

    [Fact]
    public void Hold_enough_to_describe_a_house()
    {
        Assert.True(Tables.Materials.Count >= 40, $"{Tables.Materials.Count} materials");
        Assert.True(Tables.BuildUps.Count >= 15, $"{Tables.BuildUps.Count} build-ups");
        Assert.True(Tables.Radios.Count >= 6, $"{Tables.Radios.Count} radios");
    }

    [Theory]
    [MemberData(nameof(Wanted))]
    public void Have_a_row_for(string what, string row) =>
        Assert.True(Tables.Materials.ContainsKey(row), $"There is no '{row}' for {what}");

    [Theory]
    [InlineData("timber-joist-150")]
    [InlineData("timber-joist-200")]
    [InlineData("timber-joist-225")]
    [InlineData("timber-joist-300")]
    [InlineData("i-joist-240")]
    [InlineData("i-joist-300")]
    [InlineData("concrete-slab-150")]
    [InlineData("concrete-slab-200")]
    [InlineData("beam-and-block")]
    public void Have_a_floor_for(string row) => Assert.True(Tables.BuildUps.ContainsKey(row));

    [Theory]
    [InlineData("controller-typical")]
    [InlineData("controller-low-energy")]
    [InlineData("console-typical")]
    [InlineData("receiver-minimum")]
    [InlineData("receiver-usb")]
    [InlineData("headset")]
    public void Have_a_radio_for(string row) => Assert.True(Tables.Radios.ContainsKey(row));

    [Fact]
    public void Say_of_every_row_what_it_is_and_where_it_is_from()
    {
        Assert.All(Tables.Materials.Values, m => Assert.False(string.IsNullOrWhiteSpace(m.Source) || m.Description.Length == 0));
        Assert.All(Tables.BuildUps.Values, b => Assert.False(string.IsNullOrWhiteSpace(b.Source) || b.Description.Length == 0));
        Assert.All(Tables.Radios.Values, r => Assert.False(string.IsNullOrWhiteSpace(r.Source) || r.Description.Length == 0));
        Assert.All(Tables.Margins, m => Assert.False(string.IsNullOrWhiteSpace(m.Source)));
    }

    [Fact]
    public void Name_rows_by_one_word_that_is_their_key()
    {
        Assert.All(Tables.Materials, row => Assert.Equal(row.Key, row.Value.Name));
        Assert.All(Tables.BuildUps, row => Assert.Equal(row.Key, row.Value.Name));
        Assert.All(Tables.Radios, row => Assert.Equal(row.Key, row.Value.Name));
        Assert.All([.. Tables.Materials.Keys, .. Tables.BuildUps.Keys, .. Tables.Radios.Keys], name => Assert.Matches(Kebab, name));
    }

    [Fact]
    public void Keep_the_order_of_their_files()
    {
        Assert.Equal(NamesIn("materials.yaml"), Tables.Materials.Keys);
        Assert.Equal(NamesIn("floors.yaml"), Tables.BuildUps.Keys);
        Assert.Equal(NamesIn("radios.yaml"), Tables.Radios.Keys);
    }

    [Fact]
    public void Build_every_construction_of_layers_as_thick_as_it_is_said_to_be()
    {
        Material[] built = [.. Tables.Materials.Values.Where(m => m.Layers.Count > 0)];
        Assert.True(built.Length >= 40, $"{built.Length} rows with layers");
        Assert.All(built, m => Assert.Equal(m.ThicknessMetres!.Value, m.Layers.Sum(layer => layer.ThicknessMetres), 0.001));
    }

    [Fact]
    public void Know_the_inside_of_every_layer_but_air() =>
        Assert.All(
            Tables.Materials.Values.SelectMany(m => m.Layers),
            layer => Assert.Equal(layer.SubstanceName == "air", layer.Substance is null));

    [Fact]
    public void Stand_studs_no_deeper_than_their_wall() =>
        Assert.All(
            Tables.Materials.Values.Where(m => m.Ribs is not null),
            m => Assert.InRange(m.Ribs!.DepthMetres, 0.001, m.ThicknessMetres!.Value));

    [Fact]
    public void Scale_a_joist_to_its_depth()
    {
        Ribs joists = Assert.Single(Tables.BuildUps["timber-joist-225"].Layers, layer => layer.Joists is not null).Joists!;
        Assert.Equal(Tables.Materials["timber"].LossDb * 2.25, joists.Material.LossDb, 1e-12);
        Assert.Equal("timber-225mm", joists.Material.Name);
        Assert.Equal(LossForm.Sheet, joists.Material.Form);
        Assert.Equal(0.225, joists.DepthMetres, 1e-12);
    }

    [Fact]
    public void Agree_with_the_form_of_the_layers_of_floors() =>
        Assert.All(
            Tables.BuildUps.Values.SelectMany(b => b.Layers).Select(layer => layer.Material).OfType<Material>(),
            m => Assert.Equal(LossForm.Sheet, m.Form));

    [Fact]
    public void Tell_which_files_they_are() =>
        Assert.Equal(
            new TableFiles("materials.yaml (built in)", "floors.yaml (built in)", "radios.yaml (built in)", "margins.yaml (built in)", "spreads.yaml (built in)", "cables.yaml (built in)"),
            Tables.Files);

    [Theory]
    [InlineData(-3, null)]
    [InlineData(9.99, 5.0)]
    [InlineData(10, 10.0)]
    [InlineData(60, 30.0)]
    public void Say_what_a_margin_means(double marginDb, double? row) => Assert.Equal(row, Tables.MeaningOf(marginDb)?.MarginDb);

    [Fact]
    public void Read_the_same_where_a_comma_parts_decimals()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo german = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            german.NumberFormat.NumberDecimalSeparator = ",";
            german.NumberFormat.NumberGroupSeparator = ".";
            CultureInfo.CurrentCulture = german;
            MaterialTables read = MaterialTablesFile.ReadBuiltIn().Tables!;
            Assert.Equal(3.4, read.Materials["drywall-stud"].LossDb);
            Assert.Contains("timber-225mm", read.BuildUps["timber-joist-225"].Layers.Select(l => l.Joists?.Material.Name));
            Assert.Equal(Tables.Materials.Values.Select(m => m.LossDb), read.Materials.Values.Select(m => m.LossDb));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static IEnumerable<string> NamesIn(string file) =>
        NameLine().Matches(MaterialTablesFile.BuiltInText(file)).Select(match => match.Groups[1].Value);

    [GeneratedRegex(@"^  - name: (\S+)$", RegexOptions.Multiline)]
    private static partial Regex NameLine();
}
