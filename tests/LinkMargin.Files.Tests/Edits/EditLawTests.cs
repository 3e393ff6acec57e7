using System.Text.Json;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Edits;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Resources;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Edits;

/// <summary>The law: an edit gives exactly the house that the file gives when somebody edits it by hand.</summary>
public sealed class EditLawTests
{
    private static readonly MaterialTables Tables = MaterialTablesFile.ReadBuiltIn().Tables!;

    /// <summary>An edit, what stands in the demo house's file, and what somebody would write there instead.</summary>
    public static TheoryData<string, string, string> ByHand => new()
    {
        { "close door den door", "name: den door, between: [games den, passage], at: 0.1, width: 0.84, material: door-solid, open: true", "name: den door, between: [games den, passage], at: 0.1, width: 0.84, material: door-solid" },
        { "open door 'kitchen door'", "at: 1.95, width: 0.84, material: door-glazed}", "at: 1.95, width: 0.84, material: door-glazed}" }, // open already
        { "open door lounge to kitchen", "at: 1.95, width: 0.84, material: door-glazed}", "at: 1.95, width: 0.84, material: door-glazed, open: true}" },
        { "open window window east of study", "{room: study, side: east, width: 1.2,", "{room: study, side: east, open: true, width: 1.2," },
        { "remove fixture bookcase", "  - {name: bookcase, level: bedrooms, box: [3.6, 7.02, 6.2, 7.32], to: 2.1, material: bookcase}\n", "" },
        { "material spine on living = blockwork-100", "{name: spine, along: [[2.4, 0], [2.4, 10.6]], material: brick-102-plastered}", "{name: spine, along: [[2.4, 0], [2.4, 10.6]], material: blockwork-100}" },
        { "material balustrade on bedrooms = brick-102", "{name: balustrade, along: [[1.05, 3.4], [1.05, 6.6]], height: 0.9, material: timber-boarding}", "{name: balustrade, along: [[1.05, 3.4], [1.05, 6.6]], height: 0.9, material: brick-102}" },
        { "move spot larder shelf to 3.4 5.4 1.2", "name: larder shelf, level: living, at: [3.2, 5.5, 1.6]", "name: larder shelf, level: living, at: [3.4, 5.4, 1.2]" },
        { "move spot larder shelf to 11ft 2in 17ft 3 1/2in 4ft", "name: larder shelf, level: living, at: [3.2, 5.5, 1.6]", "name: larder shelf, level: living, at: [11ft 2in, 17ft 3 1/2in, 4ft]" },
        { "move spot linen shelf to 3.4, 5.4, 1.2 on living", "name: linen shelf, level: bedrooms, at: [0.5, 7.6, 1.5]", "name: linen shelf, level: living, at: [3.4, 5.4, 1.2]" },
        { "move seat den sofa left to 3.9 2.1", "name: den sofa left, level: den, at: [4.4, 2.4]", "name: den sofa left, level: den, at: [3.9, 2.1]" },
        { "move seat main bed to 3.5 2 60cm", "name: main bed, level: bedrooms, at: [3.3, 1.6], hands: 0.75", "name: main bed, level: bedrooms, at: [3.5, 2], hands: 60cm" },
        { "turn seat beanbag to -30", "at: [4.2, 9.0], hands: 0.45, facing: north bedroom screen", "at: [4.2, 9.0], hands: 0.45, facing: -30" },
        { "turn seat beanbag to south-west", "at: [4.2, 9.0], hands: 0.45, facing: north bedroom screen", "at: [4.2, 9.0], hands: 0.45, facing: south-west" },
    };

    [Theory]
    [MemberData(nameof(ByHand))]
    public void An_edit_equals_editing_the_file_by_hand(string edit, string from, string to)
    {
        Assert.Contains(from, DemoHouse.Text, StringComparison.Ordinal);
        House before = Read(DemoHouse.Text);

        House edited = new EditText(before, Tables, LengthUnit.Metre).Read(edit).Edit.ApplyTo(before);
        House byHand = Read(DemoHouse.Text.Replace(from, to, StringComparison.Ordinal));

        Assert.Equal(Everything(byHand), Everything(edited));
        Assert.Equal(MarginsOf(byHand), MarginsOf(edited));
        Assert.Equal(from == to, Everything(before) == Everything(edited));
    }

    /// <summary>What is replaced, its row, the row that takes its place, and the same change by hand of every place where the demo house's file names it.</summary>
    public static TheoryData<string, string?, int?, string, string, string, string> SwapsByHand => new()
    {
        { "Walls", "spine", 1, "brick-102-plastered", "concrete-150", "{name: spine, along: [[2.4, 0], [2.4, 10.6]], material: brick-102-plastered}", "{name: spine, along: [[2.4, 0], [2.4, 10.6]], material: concrete-150}" },
        { "Walls", null, null, "brick-215", "brick-330", "material: brick-215", "material: brick-330" },
        { "Openings", null, null, "glass-double", "glass-coated", "material: glass-double", "material: glass-coated" },
        { "Openings", "larder door", null, "door-hollow", "door-fire", "{name: larder door, room: larder, side: north, width: 0.7, material: door-hollow}", "{name: larder door, room: larder, side: north, width: 0.7, material: door-fire}" },
        { "Fixtures", "bath", 2, "bath", "bath-acrylic", "to: 0.6, material: bath}", "to: 0.6, material: bath-acrylic}" },
        { "Floor", null, 0, "timber-joist-225", "timber-joist-200-boards", "build-up: timber-joist-225", "build-up: timber-joist-200-boards" },
        { "Floor", null, 1, "i-joist-240", "timber-joist-225-heated", "build-up: i-joist-240", "build-up: timber-joist-225-heated" },
    };

    [Theory]
    [MemberData(nameof(SwapsByHand))]
    public void Another_row_equals_editing_the_file_by_hand(string part, string? name, int? level, string row, string with, string from, string to)
    {
        Assert.Contains(from, DemoHouse.Text, StringComparison.Ordinal);
        House before = Read(DemoHouse.Text);
        HouseEdit edit = part == "Floor"
            ? new SwapBuildUp(level!.Value, Tables.BuildUps[with])
            : new SwapMaterial(Enum.Parse<FabricPart>(part), name, level, row, Tables.Materials[with]);

        House edited = edit.ApplyTo(before), byHand = Read(DemoHouse.Text.Replace(from, to, StringComparison.Ordinal));

        Assert.Equal(Everything(byHand), Everything(edited));
        Assert.NotEqual(Everything(before), Everything(edited));
    }

    [Fact]
    public void A_row_that_the_house_does_not_have_is_not_replaced_in_silence()
    {
        House house = Read(DemoHouse.Text);
        Assert.Throws<ArgumentException>(() => new SwapMaterial(FabricPart.Walls, null, null, "stone-450", Tables.Materials["stone-600"]).ApplyTo(house));
        Assert.Throws<ArgumentException>(() => new SwapBuildUp(2, Tables.BuildUps["concrete-slab-150"]).ApplyTo(house)); // the roof has no floor above
    }

    [Fact]
    public void Edits_follow_one_another()
    {
        House before = Read(DemoHouse.Text);
        House open = Edited(before, "open door larder door"), both = Edited(open, "move spot larder shelf to 3 5.6 1");
        Assert.Equal(Everything(Edited(Edited(before, "move spot larder shelf to 3 5.6 1"), "open door larder door")), Everything(both));
        Assert.Equal(Everything(before), Everything(Edited(open, "close door larder door")));
    }

    private static House Edited(House house, string text) => new EditText(house, Tables, LengthUnit.Metre).Read(text).Edit.ApplyTo(house);

    private static House Read(string text) => HouseFile.Parse(text, "demo", Tables).House!;

    private static string Everything(House house) => JsonSerializer.Serialize(house);

    private static double[] MarginsOf(House house) =>
        [.. Ranking.Of(new LinkModel(house, ModelDepth.Direct)).Scores.SelectMany(s => s.Budgets).Select(b => b.MarginDb)];
}
