using LinkMargin.Engine.Houses;
using LinkMargin.Files.Changes;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Resources;
using LinkMargin.Files.Saving;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Saving;

/// <summary>The law: saving a change gives the text that somebody would write by hand, and every other letter stays.</summary>
public sealed class ChangedTextTests
{
    private static readonly MaterialTables Tables = MaterialTablesFile.ReadBuiltIn().Tables!;

    private static readonly HouseChange Rack = new(ChangeKinds.MoveSpot) { Name = "den rack", Level = 0, X = 0.45, Y = 2.8, Height = 0.9 };
    private static readonly HouseChange Shelf = new(ChangeKinds.MoveSpot) { Name = "larder shelf", Level = 1, X = 3.2, Y = 5.5, Height = 1.6 };

    /// <summary>Changes of the demo house, what stands in its file, and what somebody would write there instead.</summary>
    public static TheoryData<string, HouseChange[], string, string> ByHand => new()
    {
        { "a spot moved", [Shelf with { X = 3.45, Height = 1.2 }], "larder shelf, level: living, at: [3.2, 5.5, 1.6]", "larder shelf, level: living, at: [3.45, 5.5, 1.2]" },
        { "to another level", [Shelf with { Level = 2, Y = 6 }], "larder shelf, level: living, at: [3.2, 5.5, 1.6]", "larder shelf, level: bedrooms, at: [3.2, 6, 1.6]" },
        { "higher in its shell", [Rack with { Height = 0.5 }], "inside: equipment rack, height: 0.9", "inside: equipment rack, height: 0.5" },
        { "elsewhere in its shell", [Rack with { X = 0.6 }], "inside: equipment rack, height: 0.9", "inside: equipment rack, at: [0.6, 2.8, 0.9]" },
        { "out of its shell", [Rack with { X = 3 }], "den rack, inside: equipment rack, height: 0.9", "den rack, at: [3, 2.8, 0.9], level: den" },
        { "a seat moved", [new(ChangeKinds.MoveSeat) { Name = "den sofa left", Level = 0, X = 3.9, Y = 2.1, Height = 0.7 }], "den sofa left, level: den, at: [4.4, 2.4]", "den sofa left, level: den, at: [3.9, 2.1]" },
        { "its hands too", [new(ChangeKinds.MoveSeat) { Name = "main bed", Level = 2, X = 3.3, Y = 1.6, Height = 0.6 }], "at: [3.3, 1.6], hands: 0.75, facing: east", "at: [3.3, 1.6], hands: 0.6, facing: east" },
        { "a seat turned", [new(ChangeKinds.TurnSeat) { Name = "beanbag", Degrees = 210 }], "hands: 0.45, facing: north bedroom screen", "hands: 0.45, facing: 210" },
        { "a door opened", [Door("lounge to kitchen", 1, true)], "at: 1.95, width: 0.84, material: door-glazed}", "at: 1.95, width: 0.84, material: door-glazed, open: true}" },
        { "a door shut", [Door("den door", 0, false)], "material: door-solid, open: true}\n      - {name: cupboard door", "material: door-solid, open: false}\n      - {name: cupboard door" },
        { "a window without a name", [Door("window east of study", 2, true)], "side: east, width: 1.2, sill: 1.0, height: 1.2, material: glass-double}", "side: east, width: 1.2, sill: 1.0, height: 1.2, material: glass-double, open: true}" },
        { "a written wall", [Wall("spine", 1, "blockwork-100")], "[2.4, 10.6]], material: brick-102-plastered}", "[2.4, 10.6]], material: blockwork-100}" },
        { "a line of several stretches", [Wall("pipe boxing 2", 1, "brick-102")], "[0, 0.3]], material: drywall-one-side}\n      - {name: balustrade, along: [[1.05, 3.4], [1.05, 6.2]]", "[0, 0.3]], material: brick-102}\n      - {name: balustrade, along: [[1.05, 3.4], [1.05, 6.2]]" },
        { "a wall that follows from rooms", [Wall("study | north bedroom", 2, "brick-102")], "height: 0.9, material: timber-boarding}\n    doors:\n      - {name: main bedroom door", "height: 0.9, material: timber-boarding}\n      - {along: [[2.4, 7.4], [7, 7.4]], material: brick-102}\n    doors:\n      - {name: main bedroom door" },
        { "a fixture taken away", [new(ChangeKinds.RemoveFixture) { Name = "bookcase" }], "  - {name: bookcase, level: bedrooms, box: [3.6, 7.02, 6.2, 7.32], to: 2.1, material: bookcase}\n", "" },
        { "a fixture that a seat faces", [new(ChangeKinds.RemoveFixture) { Name = "study screen" }], "facing: study screen", "facing: 0" },
        { "other controllers", [new(ChangeKinds.Controller) { Name = "controller-class-1" }], "  controller: controller-typical", "  controller: controller-class-1" },
        { "an open side", [new(ChangeKinds.OpenSide) { Name = "equipment rack", Side = "south" }], "    open: [front]", "    open: [front, south]" },
        { "another panel", [new(ChangeKinds.SwapSide) { Name = "equipment rack", Side = "north", Material = "mesh" }], "    open: [front]", "    open: [front]\n    sides: {north: mesh}" },
        { "a seat on a cable", [new(ChangeKinds.RemoveSeat) { Name = "beanbag" }], "  - {name: beanbag, level: bedrooms, at: [4.2, 9.0], hands: 0.45, facing: north bedroom screen, used: weekly}\n", "" },
        { "nothing after all", [Door("den door", 0, false), Door("den door", 0, true)], "form: linkmargin", "form: linkmargin" },
        { "people are in no file", [new(ChangeKinds.People) { Seats = ["beanbag"] }], "form: linkmargin", "form: linkmargin" },
    };

    [Theory]
    [MemberData(nameof(ByHand))]
    public void Saving_gives_what_somebody_would_write_by_hand(string what, HouseChange[] changes, string from, string to)
    {
        string expected = ReplacedOnce(what, DemoHouse.Text, from, to);
        if (what == "a fixture that a seat faces")
        {
            expected = ReplacedOnce(what, expected, "  - {name: study screen, level: bedrooms, box: [6.4, 6.0, 6.46, 6.6], from: 0.85, to: 1.2, material: flat-screen}\n", "");
        }

        Assert.Equal(expected, Saved(DemoHouse.Text, changes));
    }

    [Fact]
    public void The_shell_of_a_spot_taken_away_leaves_the_spot_where_it_was()
    {
        string saved = Saved(DemoHouse.Text, [new(ChangeKinds.RemoveFixture) { Name = "screen cabinet" }]);
        Assert.Contains("{name: lounge cabinet, at: [5.1, 4.45, 0.3], level: living}", saved, StringComparison.Ordinal);
        Assert.DoesNotContain("name: screen cabinet", saved, StringComparison.Ordinal);
    }

    [Fact]
    public void A_spot_that_is_moved_loses_the_lead_of_its_radio()
    {
        const string Lead = ", lead: {length: 3 m, to: [3.2, 5.6, 2.1]}";
        string text = ReplacedOnce("", DemoHouse.Text, "at: [3.2, 5.5, 1.6]}", $"at: [3.2, 5.5, 1.6]{Lead}}}");
        Assert.Contains($"at: [3.2, 5.5, 1.6]{Lead}}}", Saved(text, [Door("lounge to kitchen", 1, true)]), StringComparison.Ordinal);
        Assert.Contains("{name: larder shelf, level: living, at: [3.45, 5.5, 1.6]}", Saved(text, [Shelf with { X = 3.45 }]), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_its_shell_a_spot_with_a_lead_stays_where_its_console_was()
    {
        const string Lead = "lead: {length: 2 m, to: [5.1, 4.0, 0.9]}";
        string text = ReplacedOnce("", DemoHouse.Text, "inside: screen cabinet, height: 0.3}", $"inside: screen cabinet, height: 0.3, {Lead}}}");
        string saved = Saved(text, [new(ChangeKinds.RemoveFixture) { Name = "screen cabinet" }]);
        Assert.Contains($"{{name: lounge cabinet, at: [5.1, 4.45, 0.3], {Lead}, level: living}}", saved, StringComparison.Ordinal);
    }

    [Fact]
    public void Saving_what_is_saved_and_back_gives_the_first_text_but_for_the_keys_that_were_added()
    {
        HouseChange there = Shelf with { X = 3.45 };
        string saved = Saved(DemoHouse.Text, [there]);
        Assert.Equal(DemoHouse.Text, Saved(saved, [Shelf]));
    }

    [Fact]
    public void Line_ends_of_other_systems_stay()
    {
        string text = DemoHouse.Text.Replace("\n", "\r\n", StringComparison.Ordinal);
        string saved = Saved(text, [Wall("study | north bedroom", 2, "brick-102"), Door("lounge to kitchen", 1, true), new(ChangeKinds.RemoveFixture) { Name = "bookcase" }, new(ChangeKinds.SwapSide) { Name = "equipment rack", Side = "north", Material = "mesh" }]);
        Assert.Equal(0, saved.Replace("\r\n", "", StringComparison.Ordinal).Count(c => c is '\r' or '\n'));
        Assert.Equal(Saved(DemoHouse.Text, [Wall("study | north bedroom", 2, "brick-102"), Door("lounge to kitchen", 1, true), new(ChangeKinds.RemoveFixture) { Name = "bookcase" }, new(ChangeKinds.SwapSide) { Name = "equipment rack", Side = "north", Material = "mesh" }]), saved.Replace("\r\n", "\n", StringComparison.Ordinal));
    }

    [Fact]
    public void Feet_and_inches_stay_feet_and_inches()
    {
        const string Text = """
            house: "Whinchat's" # quotes and all
            units: ft
            levels:
            - name: ground
              height: 8
              outer: brick-215
              inner: drywall-stud
              rooms: [ {name: hall, corner: [0, 0], size: [20, 15]} ]
            spots:
            - name: shelf
              at:
                - 10ft 6in
                - 5.5   # from the door
                - 4ft

            seats: [ {name: chair, at: [ 3ft, 4ft 3in ], players: 2} ]
            """;
        string saved = Saved(Text, [
            new(ChangeKinds.MoveSpot) { Name = "shelf", Level = 0, X = 11 * 0.3048, Y = 6.25 * 0.3048, Height = 4 * 0.3048 },
            new(ChangeKinds.Console) { Name = "console-low-energy" },
            new(ChangeKinds.WallMaterial) { Name = "hall | outside", Level = 0, Material = "brick-102" }]);
        Assert.Contains("    - 11ft\n    - 6.25   # from the door\n    - 4ft\n", saved.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.EndsWith("players: 2} ]\nradios: {console: console-low-energy}", saved.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.StartsWith("house: \"Whinchat's\" # quotes and all\n", saved.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.Equal(4, saved.Split("material: brick-102").Length - 1);
    }

    [Fact]
    public void Players_of_one_seat_are_moved_one_by_one_or_together()
    {
        const string Row = "{name: couch, level: den, at: [4.4, 2.4], players: 2, facing: north}";
        string text = ReplacedOnce("", DemoHouse.Text, "{name: den sofa left, level: den, at: [4.4, 2.4], hands: 0.7, facing: den screen}", Row);
        Seat[] seats = [.. Read(text).Seats.Where(seat => seat.Group == "couch")];
        HouseChange To(Seat seat, double dx) => new(ChangeKinds.MoveSeat) { Name = seat.Name, Level = 0, X = seat.Plan.X + dx, Y = seat.Plan.Y, Height = seat.HandsMetres };
        Assert.Contains(Row.Replace("4.4,", "4.7,", StringComparison.Ordinal), Saved(text, [To(seats[0], 0.3), To(seats[1], 0.3)]), StringComparison.Ordinal);
        string one = Saved(text, [To(seats[1], 0.5)]);
        Assert.Contains("{name: couch, level: den, players: [[", one, StringComparison.Ordinal);
        Assert.Equal(seats[1].Plan.X + 0.5, Read(one).Seats.Single(seat => seat.Name == "couch 2").Plan.X, 1e-3);

        // A row turns about its middle when the file turns it; people who only look elsewhere stay where they are.
        string turned = Saved(text, [new(ChangeKinds.TurnSeat) { Name = "couch 1", Degrees = 45 }]);
        Assert.Contains(", facing: 45}", turned, StringComparison.Ordinal);
        Assert.Equal(seats.Select(seat => Math.Round(seat.Plan.X, 3)), Read(turned).Seats.Where(seat => seat.Group == "couch").Select(seat => Math.Round(seat.Plan.X, 3)));
    }

    [Theory]
    [InlineData("true", "'true'")]
    [InlineData("it's", "'it''s'")]
    [InlineData("a, b", "'a, b'")]
    [InlineData("x: y", "'x: y'")]
    [InlineData("- dash", "'- dash'")]
    [InlineData("#1", "'#1'")]
    [InlineData("plain name 2", "plain name 2")]
    [InlineData("münster", "'münster'")]
    public void Names_are_quoted_where_they_need_it(string name, string expected) => Assert.Equal(expected, YamlWord.Of(name));

    /// <summary>Many changes at once, in random order, on the demo house: the text always reads as the house that was tried.</summary>
    [Fact]
    public void Any_changes_together_are_saved_whole()
    {
        for (int seed = 1; seed <= 30; seed++)
        {
            var random = new Random(seed);
            House house = Read(DemoHouse.Text);
            List<HouseChange> changes = [];
            for (int i = 0; i < 8; i++)
            {
                Wall wall = Pick(house.Levels[random.Next(3)].Walls);
                int level = house.Levels.ToList().FindIndex(one => one.Walls.Contains(wall));
                changes.Add(random.Next(6) switch
                {
                    0 => Rack with { Name = Pick(house.Spots).Name, Level = random.Next(3), X = 2.5 + random.NextDouble(), Y = 3.2 + random.NextDouble(), Height = 1.5 + random.NextDouble() / 2 },
                    1 => new(ChangeKinds.MoveSeat) { Name = Pick(house.Seats).Name, Level = random.Next(3), X = 1 + (4 * random.NextDouble()), Y = 1 + (8 * random.NextDouble()), Height = 0.6 },
                    2 => new(ChangeKinds.TurnSeat) { Name = Pick(house.Seats).Name, Degrees = random.Next(360) },
                    3 when wall.Openings.Any(one => one.Kind != OpeningKind.Gap) => Door(wall.Openings.First(one => one.Kind != OpeningKind.Gap).Name, level, random.Next(2) == 0),
                    4 when wall.LengthMetres > 0.5 && wall.Openings.Count == 0 && !wall.Name.Contains("outside", StringComparison.Ordinal) => Wall(wall.Name, level, "blockwork-100"),
                    _ => new(ChangeKinds.Controller) { Name = random.Next(2) == 0 ? "controller-class-1" : "controller-typical" },
                });
            }

            string saved = Saved(DemoHouse.Text, [.. changes]);
            Assert.Null(HouseDifference.First(Tried(house, [.. changes]), Read(saved)));

            // What people wrote beside the values is all there.
            Assert.Equal(DemoHouse.Text.Count(c => c == '#'), saved.Count(c => c == '#'));

            T Pick<T>(IReadOnlyList<T> items) => items[random.Next(items.Count)];
        }
    }

    private static HouseChange Door(string name, int level, bool isOpen) => new(ChangeKinds.SetOpening) { Name = name, Level = level, Open = isOpen };

    private static HouseChange Wall(string name, int level, string material) => new(ChangeKinds.WallMaterial) { Name = name, Level = level, Material = material };

    private static House Read(string text) => HouseFile.Parse(text, "house", Tables) is { House: { } house } ? house : throw new InvalidOperationException(string.Join('\n', HouseFile.Parse(text, "house", Tables).Problems));

    private static House Tried(House house, HouseChange[] changes)
    {
        foreach (HouseChange change in changes)
        {
            house = new ChangeReader(house, Tables, LinkMargin.Engine.Quantities.LengthUnit.Metre).Read(change).Aggregate(house, (before, edit) => edit.ApplyTo(before));
        }

        return house;
    }

    private static string Saved(string text, HouseChange[] changes)
    {
        HouseParseResult parsed = HouseFile.Parse(text, "house", Tables);
        House now = parsed.House!;
        foreach (HouseChange change in changes)
        {
            now = new ChangeReader(now, Tables, parsed.Unit).Read(change).Aggregate(now, (before, edit) => edit.ApplyTo(before));
        }

        return ChangedText.Of(text, parsed.House!, now, parsed.Unit, Tables);
    }

    private static string ReplacedOnce(string what, string text, string from, string to)
    {
        Assert.True(text.Split(from).Length == 2, $"{what}: {from}");
        return text.Replace(from, to, StringComparison.Ordinal);
    }
}
