using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses;

namespace LinkMargin.Files.Tests.Houses;

public sealed class HouseFileTests
{
    [Fact]
    public void A_house_is_read_in_metres_with_what_it_is_made_of()
    {
        House house = HouseText.GoodHouse();
        Assert.Equal("Test Row", house.Name);
        Assert.Equal(["low", "high"], house.Levels.Select(l => l.Name));
        Assert.Equal(["den", "hall"], house.Levels[0].Rooms.Select(r => r.Name));
        FloorAbove above = house.Levels[0].Above!;
        Assert.Equal("joisted", above.BuildUp.Name);
        Assert.Equal(new JoistLayout(0, 0.4, 0.2), above.Joists);
        Assert.Equal(2, Assert.Single(above.Voids).AreaSquareMetres, 1e-12);
        Assert.Null(house.Levels[1].Above);
    }

    [Fact]
    public void A_level_lies_on_the_build_up_of_the_one_below()
    {
        House house = HouseText.GoodHouse();
        Assert.Equal(0, house.Levels[0].ElevationMetres);
        Assert.Equal(2.4 + 0.25, house.Levels[1].ElevationMetres, 1e-12);
    }

    [Fact]
    public void Given_elevations_count_from_the_lowest_level()
    {
        House house = HouseText.GoodHouse(("height: 2.4", "height: 2.4\n    elevation: -1.1"), ("height: 2.3", "height: 2.3\n    elevation: 1.57"));
        Assert.Equal(0, house.Levels[0].ElevationMetres);
        Assert.Equal(2.67, house.Levels[1].ElevationMetres, 1e-12);
    }

    [Fact]
    public void A_spot_inside_a_fixture_is_at_its_centre_on_its_level()
    {
        House house = HouseText.GoodHouse();
        Assert.Equal(new Point3(0.5, 4, 1.1), house.PositionOf(house.Spots[0]));
        Assert.Equal(1, house.Spots[1].LevelIndex);
        Assert.Equal(2.65 + 1.6, house.PositionOf(house.Spots[1]).Z, 1e-12);
    }

    [Fact]
    public void A_seat_has_hands_a_direction_and_a_margin_with_defaults()
    {
        House house = HouseText.GoodHouse();
        Assert.Equal(0.7, house.Seats[0].HandsMetres);
        Assert.Equal(90, house.Seats[0].FacingDegrees!.Value, 1e-9);
        Assert.Equal(20, house.Seats[0].RequiredDb);
        Assert.Equal(0.9, house.Seats[1].HandsMetres);
        Assert.Equal(135, house.Seats[1].FacingDegrees);
        Assert.Equal(12, house.Seats[1].RequiredDb);
        Assert.Equal(15, HouseText.GoodHouse(("required: 12 dB\n", "")).Seats[1].RequiredDb);
    }

    [Theory]
    [InlineData("30", 30)]
    [InlineData("-90 deg", 270)]
    [InlineData("north", 90)]
    [InlineData("east", 0)]
    [InlineData("south-east", 315)]
    public void Directions_are_degrees_anticlockwise_from_east(string written, double degrees) =>
        Assert.Equal(degrees, HouseText.GoodHouse(("facing: north-west", $"facing: {written}")).Seats[1].FacingDegrees);

    [Fact]
    public void Facing_a_fixture_is_the_way_from_the_seat_to_its_centre()
    {
        // The screen's centre is (1.75, 4.85): from (0.75, 3.85) that is north-east.
        Assert.Equal(45, HouseText.GoodHouse(("at: [1.75, 1.85]", "at: [0.75, 3.85]"), ("to: 1.9", "to: 0.5"), ("height: 1.1}\n  - {name: shelf", "height: 0.3}\n  - {name: shelf")).Seats[0].FacingDegrees!.Value, 1e-9);
    }

    [Fact]
    public void Fixtures_are_boxes_solid_or_hollow()
    {
        House house = HouseText.GoodHouse();
        Fixture rack = house.Fixtures[0], screen = house.Fixtures[1];
        Assert.True(rack.IsShell);
        Assert.Equal(BoxSides.South, rack.OpenSides);
        Assert.Equal((0.5, 4.0), (rack.Centre.X, rack.Centre.Y));
        Assert.Equal(0.6, rack.SizeX, 1e-12);
        Assert.Equal(1.0, rack.SizeY, 1e-12);
        Assert.Equal((0, 1.9), (rack.FromMetres, rack.ToMetres));
        Assert.False(screen.IsShell);
        Assert.Equal(BoxSides.None, screen.OpenSides);
    }

    // Left and right are those of somebody who stands before the front and looks at it.
    [Theory]
    [InlineData("south", "front", BoxSides.South)]
    [InlineData("south", "left", BoxSides.West)]
    [InlineData("south", "right", BoxSides.East)]
    [InlineData("east", "left", BoxSides.South)]
    [InlineData("east", "right", BoxSides.North)]
    [InlineData("north", "left", BoxSides.East)]
    [InlineData("west", "left", BoxSides.North)]
    [InlineData("west", "back", BoxSides.East)]
    [InlineData("west", "top", BoxSides.Top)]
    [InlineData("north", "bottom", BoxSides.Bottom)]
    [InlineData("north", "west", BoxSides.West)]
    public void Open_sides_are_named_from_the_front_or_by_compass(string front, string side, BoxSides meant) =>
        Assert.Equal(meant, HouseText.GoodHouse(("open: [front]", $"front: {front}, open: [{side}]")).Fixtures[0].OpenSides);

    [Fact]
    public void A_side_may_have_a_panel_of_its_own_or_none()
    {
        Fixture rack = HouseText.GoodHouse(("open: [front]", "front: east, sides: {front: board, back: none, top: steel}")).Fixtures[0];
        Assert.True(rack.IsShell);
        Assert.Equal(
            ["board", null, "steel", "steel", "steel", "steel"],
            new[] { BoxSides.East, BoxSides.West, BoxSides.North, BoxSides.South, BoxSides.Top, BoxSides.Bottom }.Select(side => rack.PanelOn(side)?.Name));
    }

    [Fact]
    public void A_fixture_may_be_turned_written_from_any_corner_and_reach_the_ceiling()
    {
        Fixture screen = HouseText.GoodHouse(
            ("box: [1, 4.8, 2.5, 4.9], from: 0.7, to: 1.5", "box: [2.5, 4.9, 1, 4.8], turn: -30 deg")).Fixtures[1];
        Assert.Equal(1.5, screen.SizeX, 1e-12);
        Assert.Equal(-30, screen.TurnDegrees);
        Assert.Equal((0, 2.4), (screen.FromMetres, screen.ToMetres));
    }

    [Fact]
    public void A_turned_fixture_is_where_it_stands_after_turning()
    {
        // 3 m by 0.2 m, turned by a right angle about (2, 2): it then reaches from y 0.5 to 3.5 and x 1.9 to 2.1.
        (string, string) turned = ("name: screen, level: low, box: [1, 4.8, 2.5, 4.9], from: 0.7, to: 1.5", "name: screen, level: low, box: [0.5, 1.9, 3.5, 2.1], turn: 90");
        (string, string) looking = ("facing: screen, ", "");
        Assert.Contains("inside the fixture 'screen', which is solid", HouseText.Error(
            turned, looking, ("name: shelf, level: high, at: [3, 2, 1.6]", "name: shelf, level: low, at: [2, 3, 1]")), StringComparison.Ordinal);
        HouseText.GoodHouse(turned, looking, ("name: shelf, level: high, at: [3, 2, 1.6]", "name: shelf, level: low, at: [3, 2, 1]"));
    }

    [Fact]
    public void Joists_along_y_are_placed_by_their_x()
    {
        JoistLayout joists = HouseText.GoodHouse(("run: x", "run: y")).Levels[0].Above!.Joists!;
        Assert.Equal(new JoistLayout(90, 0.4, -0.2), joists);
    }

    [Fact]
    public void Joists_take_their_spacing_from_the_build_up_and_may_have_an_unknown_place()
    {
        JoistLayout joists = HouseText.GoodHouse(("{run: x, spacing: 0.4, first: 0.2}", "{run: 30}")).Levels[0].Above!.Joists!;
        Assert.Equal(new JoistLayout(30, 0.4, null), joists);
    }

    [Fact]
    public void A_void_may_be_a_rectangle() =>
        Assert.Equal(2, HouseText.GoodHouse(("[[[4.5, 1], [5.5, 1], [5.5, 3], [4.5, 3]]]", "[{corner: [4.5, 1], size: [1, 2]}]")).Levels[0].Above!.Voids[0].AreaSquareMetres, 1e-12);

    [Theory]
    [InlineData("", false)]
    [InlineData("gain-includes-mismatch: true, ", true)]
    [InlineData("gain-includes-mismatch: false, ", false)]
    public void A_radio_written_out_may_say_that_its_gain_includes_the_mismatch(string written, bool expected) =>
        Assert.Equal(expected, HouseText.GoodHouse(("gain: -2 dBi, sensitivity", $"gain: -2 dBi, {written}sensitivity")).Controller.GainIncludesMismatch);

    [Fact]
    public void Radios_come_from_the_table_are_written_out_or_are_typical()
    {
        House house = HouseText.GoodHouse();
        Assert.Equal("console-typical", house.Console.Name);
        Assert.Equal("mine", house.Controller.Name);
        Assert.Equal(6, house.Controller.HandAndBodyDb);
        Assert.Equal(3, house.Controller.SpreadDb);
        int from = HouseText.Good.IndexOf("radios:", StringComparison.Ordinal), to = HouseText.Good.IndexOf("required:", StringComparison.Ordinal);
        House typical = HouseText.GoodHouse((HouseText.Good[from..to], ""));
        Assert.Equal("controller-typical", typical.Controller.Name);
    }

    [Fact]
    public void A_house_in_feet_is_the_house_in_metres()
    {
        House feet = HouseText.Read("""
            house: Same
            units: ft
            levels:
              - name: only
                height: 8
                outer: brick
                rooms: [{name: den, corner: [0, 0], size: [12' 6", 10]}]
            spots: [{name: shelf, at: [3ft 3 1/2in, 2, 1m]}]
            seats: [{name: sofa, at: [2000 mm, 2]}]
            """).House!;
        Assert.Equal(2.4384, feet.Levels[0].HeightMetres, 1e-12);
        Assert.Equal(3.81 * 3.048, feet.Levels[0].Rooms[0].Outline.AreaSquareMetres, 1e-9);
        Assert.Equal(1.0033, feet.Spots[0].Plan.X, 1e-12);
        Assert.Equal(1, feet.Spots[0].HeightMetres, 1e-12);
        Assert.Equal(2, feet.Seats[0].Plan.X, 1e-12);
    }

    [Fact]
    public void A_file_that_cannot_be_opened_is_one_mistake_and_no_house()
    {
        HouseParseResult parsed = HouseFile.Read(Path.Combine(Path.GetTempPath(), "no-such-folder", "house.yaml"), SmallTables.Tables);
        Assert.Null(parsed.House);
        Assert.Contains("no such file", Assert.Single(parsed.Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_is_read_as_its_text_is()
    {
        string path = Path.GetTempFileName();
        try
        {
            File.WriteAllText(path, HouseText.Good.ReplaceLineEndings("\r\n"), new System.Text.UTF8Encoding(true));
            HouseParseResult parsed = HouseFile.Read(path, SmallTables.Tables);
            Assert.Empty(parsed.Problems);
            Assert.Equal(2, parsed.House!.Seats.Count);
        }
        finally
        {
            File.Delete(path);
        }
    }
}
