using System.Text;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tests.Houses;

/// <summary>What a person may write wrongly, and what is said about it.</summary>
public sealed class HouseFaultTests
{
    [Theory]
    [InlineData("units: m", "unit: m", "house.yaml:2:1: 'unit' is not a key of a house file; did you mean 'units'?")]
    [InlineData("units: m", "units: yards", "house.yaml:2:8: units: 'yards' is not a unit for lengths; write one of: m, cm, mm, ft, in")]
    [InlineData("house: Test Row", "house:", "house.yaml:1:1: 'house' of a house file has no value; write one or remove the key")]
    [InlineData("height: 2.4", "height: tall", "house.yaml:5:13: height: 'tall' is not a length; write, for example, 3.81 m or 38 mm (0.3 m to 30 m is allowed)")]
    [InlineData("height: 2.4", "height: -2.4", "house.yaml:5:13: height: '-2.4' (-2.4 m) is outside the allowed 0.3 m to 30 m")]
    [InlineData("height: 2.4", "height: 2400", "house.yaml:5:13: height: '2400' (2400 m) is outside the allowed 0.3 m to 30 m")]
    [InlineData("height: 2.4", "height: .nan", "house.yaml:5:13: height: '.nan' is not a finite number (0.3 m to 30 m is allowed)")]
    [InlineData("height: 2.4", "height: -.inf", "house.yaml:5:13: height: '-.inf' is not a finite number (0.3 m to 30 m is allowed)")]
    [InlineData("height: 2.4", "height: 1e400", "house.yaml:5:13: height: '1e400' is too large to be a finite number (0.3 m to 30 m is allowed)")]
    [InlineData("height: 2.4", "height: 2,4", "house.yaml:5:13: height: '2,4' has a decimal comma; write 2.4 (0.3 m to 30 m is allowed)")]
    [InlineData("height: 2.4", "height: 7ft 10", "house.yaml:5:13: height: '7ft 10' has no unit after its last number; write inches as 6in, as in 12ft 6in (0.3 m to 30 m is allowed)")]
    [InlineData("height: 2.4", "height: [2, 4]", "house.yaml:5:13: height: a length is needed, 0.3 m to 30 m, not a list")]
    [InlineData("inner: board\n    rooms:\n      - {name: den", "inner: borad\n    rooms:\n      - {name: den", "house.yaml:7:12: inner: 'borad' is not in the material table; did you mean 'board'?")]
    [InlineData("material: leaf, open: true", "material: oak, open: true", "house.yaml:12:58: material: 'oak' is not in the material table; write one of: board, brick, leaf, steel")]
    [InlineData("open: true", "open: maybe", "house.yaml:12:70: open: write true or false, not 'maybe'")]
    [InlineData("name: hall,", "name: den,", "house.yaml:10:16: a room on this level named 'den' is already in line 9; give each its own name", "between: [den, hall]", "between: [den, outside]", "room: hall", "room: den", "side: east", "side: west")]
    [InlineData("name: high", "name: low", "house.yaml:23:11: a level named 'low' is already in line 4; give each its own name", "level: high", "level: low", "room: loft", "outline: [[0, 0], [1, 0], [1, 1]]")]
    [InlineData("name: screen", "name: rack", "house.yaml:31:12: a fixture named 'rack' is already in line 30; give each its own name", "facing: screen", "facing: north")]
    [InlineData("name: shelf", "name: in rack", "house.yaml:38:12: a spot named 'in rack' is already in line 37; give each its own name")]
    [InlineData("name: bed", "name: sofa", "house.yaml:41:12: a seat named 'sofa' is already in line 40; give each its own name")]
    [InlineData("size: [4, 5]", "size: [4, -5]", "house.yaml:9:47: size (north-south): '-5' (-5 m) is outside the allowed 0.1 m to 500 m")]
    [InlineData("size: [4, 5]", "size: [4, 0, 5, 0]", "house.yaml:9:43: size: 2 numbers are needed, [east-west, north-south], but there are 4; the decimal sign is a point, a comma begins the next number")]
    [InlineData("corner: [0, 0], size: [4, 5]", "corner: [0, 0]", "house.yaml:9:9: a room needs the key 'size'")]
    [InlineData("corner: [0, 0], size: [4, 5]", "corner: den", "house.yaml:9:9: a room needs the key 'size'|house.yaml:9:29: corner: write [x, y], not 'den'")]
    [InlineData(", corner: [0, 0], size: [4, 5]", "", "house.yaml:9:9: a room needs 'corner' and 'size', or an 'outline'")]
    [InlineData("outline: [[4, 0], [6, 0], [6, 5], [4, 5]]", "outline: [[4, 0], [6, 0]]", "house.yaml:10:31: outline: at least 3 places are needed, but there are 2")]
    [InlineData("outline: [[4, 0], [6, 0], [6, 5], [4, 5]]", "outline: [4, 0, 6, 0]", "house.yaml:10:31: outline: write a list of places, [[x, y], [x, y], ...]")]
    [InlineData("name: den,", "name: outside,", "house.yaml:9:16: a room cannot be named 'outside', which stands for no room; give it another name")]
    [InlineData("between: [den, hall]", "between: den", "house.yaml:12:35: between: write the two rooms it joins, [room, room]; 'outside' stands for no room")]
    [InlineData("between: [den, hall]", "between: [den, den]", "house.yaml:12:35: between: 'den' appears twice; write two different rooms, or 'outside' for one")]
    [InlineData("between: [den, hall]", "between: [den, hall], wall: stub", "house.yaml:12:9: a door gives more than one position (between, wall); keep one")]
    [InlineData("between: [den, hall], ", "", "house.yaml:12:9: a door needs a place: 'between: [room, room]', 'room' with 'side', or 'wall'")]
    [InlineData("side: south", "side: front", "house.yaml:14:27: side: 'front' is not a side of a room; write one of: north, east, south, west")]
    [InlineData("material: leaf, open: true", "material: leaf, open: true, height: 2.6", "house.yaml:12:84: a door reaches 2.6 m above the floor, and the level is 2.4 m high; fix 'height' or the level's height")]
    [InlineData("sill: 1, height: 1.1", "sill: 1.4, height: 1.1", "house.yaml:14:72: a window reaches 2.5 m above the floor, and the level is 2.4 m high; fix 'sill', 'height' or the level's height")]
    [InlineData("material: brick, height: 1.1", "material: brick, from: 1.5, height: 1.1", "house.yaml:18:83: this wall reaches 2.6 m above the floor, and the level is 2.4 m high; fix 'from', 'height' or the level's height")]
    [InlineData("build-up: joisted", "build-up: joistd", "house.yaml:20:17: build-up: 'joistd' is not a floor build-up; did you mean 'joisted'?")]
    [InlineData("run: x", "run: z", "house.yaml:21:21: run: 'z' is not a joist direction; write x, y, or an angle in degrees anticlockwise from x")]
    [InlineData("spacing: 0.4", "spacing: 0.05", "house.yaml:21:33: spacing: 0.05 m leaves no gap between joists 0.05 m wide; measure from centre to centre")]
    [InlineData("height: 2.3", "height: 2.3\n    elevation: 2.3", "house.yaml:25:16: the level 'high' begins 0.1 m below the ceiling of 'low'; levels are written lowest first and may not overlap, so fix 'elevation' or the height below")]
    [InlineData("level: low, box: [0.2", "level: lwo, box: [0.2", "house.yaml:30:25: level: no level is named 'lwo'; did you mean 'low'?")]
    [InlineData("level: low, box: [0.2", "box: [0.2", "house.yaml:30:5: a fixture needs the key 'level'")]
    [InlineData("box: [0.2, 3.5, 0.8, 4.5]", "box: [0.2, 3.5, 0.2, 4.5]", "house.yaml:30:35: box: its footprint is 0 m by 1 m; each side may be 0.001 m to 100 m, and the form is [x0, y0, x1, y1], two opposite corners of its footprint")]
    [InlineData("from: 0.7, to: 1.5", "from: 1.5, to: 0.7", "house.yaml:31:72: the top of this fixture, 0.7 m, is not above its underside, 1.5 m; both are measured from the floor", "facing: screen", "facing: screen")]
    [InlineData("from: 0.7, to: 1.5", "from: 0.7, to: 2.5", "house.yaml:31:72: to: 2.5 m is above the ceiling of the level 'low'; 0 m to 2.4 m is allowed")]
    [InlineData("open: [front]", "shell: false, open: [front]", "house.yaml:30:90: a fixture with open sides is a shell; remove 'shell: false' or 'open'")]
    [InlineData("open: [front]", "shell: false, sides: {front: none}", "house.yaml:30:90: a fixture with 'sides' is a shell; remove 'shell: false' or 'sides'")]
    [InlineData("open: [front]", "sides: {font: none}", "house.yaml:30:91: 'font' is not a key of the sides of a fixture; did you mean 'front'?")]
    [InlineData("open: [front]", "sides: {front: steal}", "house.yaml:30:98: front: 'steal' is not in the material table; did you mean 'steel'?")]
    [InlineData("open: [front]", "sides: {front: none, south: steel}", "house.yaml:30:111: south: 'front' already names this side; remove one of the two")]
    [InlineData("open: [front]", "open: [front], sides: {front: steel}", "house.yaml:30:113: front: 'open' already says that this side has no panel; remove it from one of the two")]
    [InlineData("open: [front]", "open: [font]", "house.yaml:30:90: open: 'font' is not a side of a fixture; did you mean 'front'?")]
    [InlineData("console: console-typical", "console: consol-typical", "house.yaml:33:12: console: 'consol-typical' is not in the radio table; did you mean 'console-typical'?")]
    [InlineData(", hand: 6 dB", "", "house.yaml:34:15: a radio needs the key 'hand'")]
    [InlineData("transmit: 4 dBm", "transmit: 100 mW", "house.yaml:34:38: transmit: '100 mW' has the unit 'mW', but this is a level in dBm; write -90 or -90 dBm (-40 dBm to 36 dBm is allowed)")]
    [InlineData("required: 12 dB", "required: 99 dB", "house.yaml:35:11: required: '99 dB' is outside the allowed 0 dB to 60 dB")]
    [InlineData("inside: rack", "inside: rcak", "house.yaml:37:29: inside: no fixture is named 'rcak'; did you mean 'rack'?")]
    [InlineData("inside: rack, height: 1.1", "inside: rack", "house.yaml:37:5: a spot inside a fixture needs its 'height' over the floor, or 'at: [x, y, height]'")]
    [InlineData("inside: rack, height: 1.1", "inside: rack, height: 2.1", "house.yaml:37:43: this place is not inside the fixture 'rack', which reaches from 0 m to 1.9 m above the floor around (0.5, 4); fix it or remove 'inside'")]
    [InlineData("inside: rack, height: 1.1", "inside: rack, level: high, height: 1.1", "house.yaml:37:42: the fixture 'rack' stands on the level 'low', not on 'high'; remove 'level' or fix it")]
    [InlineData("inside: rack, height: 1.1", "inside: screen, height: 1.1", "house.yaml:37:45: the spot 'in rack' is inside the fixture 'screen', which is solid; move it, or make the fixture a shell with 'shell: true' or 'open: [front]'")]
    [InlineData("at: [3, 2, 1.6]", "at: [3, 2]", "house.yaml:38:36: at: 3 numbers are needed, [x, y, height], but there are 2")]
    [InlineData("at: [3, 2, 1.6]", "at: [3, 2, 2.4]", "house.yaml:38:36: at (height): 2.4 m is above the ceiling of the level 'high'; 0 m to 2.3 m is allowed")]
    [InlineData("at: [3, 2, 1.6]", "at: [3, 7, 1.6]", "house.yaml:38:36: the spot 'shelf' lies outside the level 'high', which reaches x from 0 to 6 m, y from 0 to 5 m; fix 'at' or 'level'")]
    [InlineData("at: [1, 1]", "at: [-1, 1]", "house.yaml:41:34: the seat 'bed' lies outside the level 'high', which reaches x from 0 to 6 m, y from 0 to 5 m; fix 'at' or 'level'")]
    [InlineData("at: [1, 1]", "at: [1, 1, 0.9]", "house.yaml:41:34: at: a seat is at [x, y]; the height of the hands over the floor is written as 'hands'")]
    [InlineData("hands: 0.9", "hands: 2.9", "house.yaml:41:49: hands: 2.9 m is above the ceiling of the level 'high'; 0 m to 2.3 m is allowed")]
    [InlineData("facing: north-west", "facing: nroth-west", "house.yaml:41:62: facing: 'nroth-west' is neither a fixture nor a direction (north, south-east, ..., or degrees anticlockwise from east); did you mean 'north-west'?")]
    [InlineData("facing: north-west", "facing: 400", "house.yaml:41:62: facing: '400' (400 deg) is outside the allowed -360 deg to 360 deg")]
    [InlineData("at: [1.75, 1.85]", "at: [1.75, 4.85]", "house.yaml:40:56: facing: the seat is at the centre of the fixture 'screen', so it has no direction; write a direction or move it", "from: 0.7, to: 1.5", "from: 0.8, to: 1.5")]
    [InlineData("hands: 0.9,", "used: dayly,", "house.yaml:41:48: used: 'dayly' does not say how often; did you mean 'daily'?")]
    [InlineData("hands: 0.9,", "used: often,", "house.yaml:41:48: used: 'often' does not say how often; write daily, weekly, rarely, or on how many days of a month")]
    [InlineData("hands: 0.9,", "used: 0,", "house.yaml:41:48: used: '0' is outside the allowed 0.1 to 31")]
    [InlineData("hands: 0.9,", "used: 31.5,", "house.yaml:41:48: used: '31.5' is outside the allowed 0.1 to 31")]
    [InlineData("hands: 0.9,", "plays: shlef,", "house.yaml:41:49: plays: no spot is named 'shlef'; did you mean 'shelf'?")]
    [InlineData("hands: 0.9,", "players: 0,", "house.yaml:41:51: players: '0' is outside the allowed 1 to 16")]
    [InlineData("hands: 0.9,", "players: 1.5,", "house.yaml:41:51: players: 1.5 is not a whole number of players")]
    [InlineData("hands: 0.9,", "players: [[1, 1], [2, 2]],", "house.yaml:41:34: 'players' says where each player is, so 'at' is not needed; remove it, or write 'players' as a number")]
    [InlineData("at: [1, 1], hands: 0.9,", "players: [1, 2],", "house.yaml:41:39: players: write a list of places, [[x, y], [x, y], ...]")]
    [InlineData("at: [1, 1], hands: 0.9,", "players: 3,", "house.yaml:41:5: a seat needs the key 'at'")]
    [InlineData("at: [1, 1], hands: 0.9,", "at: [5.5, 1], players: 4, facing: north,", "house.yaml:41:34: the seat 'bed 4' lies outside the level 'high', which reaches x from 0 to 6 m, y from 0 to 5 m; fix 'at' or 'level'", ", facing: north, facing: north-west", ", facing: north")]
    [InlineData("name: bed, level: high, at: [1, 1]", "name: sof, level: low, at: [1, 1], players: 2", "house.yaml:41:12: a seat named 'sof 1' is already in line 40; give each its own name", "name: sofa", "name: sof 1")]
    [InlineData("heights: [0.5, 1.2]", "heights: [0.5, 2.5]", "house.yaml:43:66: heights: 2.5 m is above the ceiling of the level 'high'; 0 m to 2.3 m is allowed")]
    [InlineData("heights: [0.5, 1.2]", "heights: 0.5", "house.yaml:43:60: heights: a list is needed (items that begin with '- ', or [ ... ]), not '0.5'")]
    [InlineData(", heights: [0.5, 1.2]", "", "house.yaml:43:5: a zone needs the key 'heights'")]
    [InlineData("room: loft, h", "room: lotf, h", "house.yaml:43:45: room: no room of the level 'high' is named 'lotf'; did you mean 'loft'?")]
    [InlineData("room: loft, h", "h", "house.yaml:43:5: a zone needs a 'room', a 'corner' and 'size', or an 'outline'")]
    [InlineData("room: loft, h", "room: loft, corner: [0, 0], size: [1, 1], h", "house.yaml:43:5: a zone gives more than one extent (room, corner); keep one")]
    [InlineData("name: loft shelves", "name: top of the screen", "house.yaml:44:12: a zone named 'top of the screen' is already in line 43; give each its own name")]
    [InlineData("from: 0.2, to: 1}", "from: 1, to: 0.2}", "house.yaml:47:85: the top of this keep-out, 0.2 m, is not above its underside, 1 m; both are measured from the floor")]
    [InlineData("outline: [[0, 0], [1, 0], [0, 1]]", "outline: [[0, 0], [1, 0]]", "house.yaml:47:46: outline: at least 3 places are needed, but there are 2")]
    public void A_mistake_is_reported_at_its_place_with_the_value_and_the_remedy(string from, string to, string faults, params string[] more)
    {
        List<(string, string)> changes = [(from, to), .. more.Chunk(2).Select(pair => (pair[0], pair[1]))];
        Assert.Equal(faults.Split('|'), HouseText.Faults([.. changes]));
    }

    [Theory]
    [InlineData("at: [1, 1], hands", "at: [1, 0.02], hands", "house.yaml:41:34: the seat 'bed' is inside the wall '*'; move it into a room")]
    [InlineData("at: [1.75, 1.85]", "at: [1.75, 4.85]", "house.yaml:40:34: the hands of the seat 'sofa' are inside the solid fixture 'screen'; raise 'hands' or move one of the two", "from: 0.7, to: 1.5", "from: 0.5, to: 1.5", "facing: screen", "facing: south")]
    [InlineData("height: 2.3", "height: 2.3\n    elevation: 2.75", "house.yaml:25:16: there is 0.35 m between the ceiling of 'low' and the floor of 'high', but the build-up is 0.25 m thick; check 'elevation', 'height' and 'build-up'")]
    [InlineData("build-up: joisted", "build-up: slab", "house.yaml:21:15: build-up 'slab' has no joists; 'joists' is ignored")]
    [InlineData("      joists: {run: x, spacing: 0.4, first: 0.2}\n", "", "house.yaml:20:7: no joist direction is given; along y, the shorter span, is assumed; add 'joists: {run: x}' or 'joists: {run: y}'")]
    [InlineData("box: [1, 4.8, 2.5, 4.9]", "box: [11, 4.8, 12.5, 4.9]", "house.yaml:31:37: the fixture 'screen' lies outside the level 'low', which reaches x from 0 to 6 m, y from 0 to 5 m; check 'box'")]
    [InlineData("[[4.5, 1], [5.5, 1], [5.5, 3], [4.5, 3]]", "[[7.5, 1], [8.5, 1], [8.5, 3], [7.5, 3]]", "house.yaml:22:15: this void is outside every room of 'low', so it connects nothing; check its corners")]
    [InlineData("name: screen, level: low", "name: screen, level: high", "house.yaml:40:56: facing: the fixture 'screen' is on the level 'high', not on the seat's")]
    public void What_is_odd_is_reported_and_the_house_is_read(string from, string to, string fault, params string[] more)
    {
        string odd = HouseText.Warning([(from, to), .. more.Chunk(2).Select(pair => (pair[0], pair[1]))]);
        string[] parts = fault.Split('*');
        Assert.StartsWith(parts[0], odd, StringComparison.Ordinal);
        Assert.EndsWith(parts[^1], odd, StringComparison.Ordinal);
    }

    [Fact]
    public void A_floor_above_the_highest_level_plays_no_part() =>
        Assert.Equal(
            "house.yaml:30:7: no level is above 'high', so 'above' is ignored",
            HouseText.Warning(("{name: loft, corner: [0, 0], size: [6, 5]}", "{name: loft, corner: [0, 0], size: [6, 5]}\n    above:\n      build-up: slab")));

    [Fact]
    public void A_level_with_another_above_must_say_what_lies_between()
    {
        int from = HouseText.Good.IndexOf("    above:", StringComparison.Ordinal), to = HouseText.Good.IndexOf("  - name: high", StringComparison.Ordinal);
        Assert.Equal(
            "house.yaml:4:5: the level 'low' has another level above it but does not say what is between them; add 'above: {build-up: ...}', such as joisted or slab; 'linkmargin materials' lists all",
            HouseText.Error((HouseText.Good[from..to], "")));
    }

    [Fact]
    public void A_void_that_crosses_itself_is_refused_by_the_same_check_as_a_room() =>
        Assert.Contains("crosses or touches itself", HouseText.Error(("[[[4.5, 1], [5.5, 1], [5.5, 3], [4.5, 3]]]", "[[[4.5, 1], [5.5, 3], [5.5, 1], [4.5, 3]]]")), StringComparison.Ordinal);

    [Fact]
    public void Nothing_to_compare_is_odd()
    {
        int from = HouseText.Good.IndexOf("spots:", StringComparison.Ordinal);
        IReadOnlyList<string> faults = HouseText.Faults((HouseText.Good[from..], ""));
        Assert.Equal(2, faults.Count);
        Assert.Contains("no spots", faults[0], StringComparison.Ordinal);
        Assert.Contains("no seats", faults[1], StringComparison.Ordinal);
    }

    [Fact]
    public void All_faults_of_a_file_come_at_once_in_the_order_of_the_file()
    {
        IReadOnlyList<string> faults = HouseText.Faults(
            ("height: 2.4", "height: -1"),
            ("inner: board\n    rooms:\n      - {name: den", "inner: bord\n    rooms:\n      - {name: den"),
            ("run: x", "run: up"),
            ("inside: rack", "inside: rakc"),
            ("hands: 0.9", "hand: 0.9"),
            ("required: 20 dB", "required: loud"));
        Assert.Equal([5, 7, 21, 37, 40, 41], faults.Select(f => int.Parse(f.Split(':')[1], System.Globalization.CultureInfo.InvariantCulture)));
    }

    [Fact]
    public void One_mistake_is_not_reported_again_by_what_refers_to_it()
    {
        // The room cannot be read, so its door and window are not looked into; the rack cannot, so neither is its spot.
        Assert.Single(HouseText.Faults(("corner: [0, 0], size: [4, 5]", "corner: [0, 0], size: [4, wide]")));
        Assert.Single(HouseText.Faults(("box: [0.2, 3.5, 0.8, 4.5]", "box: [0.2, 3.5, 0.8, high]")));
        Assert.Single(HouseText.Faults(("height: 2.3", "height: low"), ("at: [3, 2, 1.6]", "at: [3, 2, 2.9]")));
        Assert.Equal(2, HouseText.Faults(("name: den,", "nam: den,")).Count); // the wrong key and the one that is missing
    }

    [Fact]
    public void A_file_that_is_no_house_gets_its_sentence()
    {
        Assert.Equal("house.yaml:1:1: this file is empty; 'linkmargin new FILE' writes one to start from", Only(""));
        Assert.Contains("keys with values are needed", Only("just a note to myself"), StringComparison.Ordinal);
        Assert.Contains("anchors and aliases", Only("house: &h x\nlevels: [*h, *h]"), StringComparison.Ordinal);
        Assert.Equal(
            ["house.yaml:1:1: 'lorem' is not a key of a house file; write one of: form, house, units, levels, fixtures, radios, required, spots, seats, zones, keep-out, displays, devices, passages, cables"],
            HouseText.Read("lorem: ipsum").Problems.Where(p => p.Message.Contains("lorem", StringComparison.Ordinal)).Select(p => p.ToString()));
    }

    [Fact]
    public void A_file_of_nothing_but_mistakes_is_reported_to_a_limit()
    {
        static string WithWrongKeys(int count) => HouseText.Good + "\n" + string.Concat(Enumerable.Range(0, count).Select(i => $"wrong{i}: 1\n"));
        Assert.Equal(ProblemList.MostReported, HouseText.Read(WithWrongKeys(ProblemList.MostReported)).Problems.Count);
        HouseParseResult parsed = HouseText.Read(WithWrongKeys(10 * ProblemList.MostReported));
        Assert.Equal(ProblemList.MostReported + 1, parsed.Problems.Count);
        Assert.Equal("there are more than 500 errors; fix the ones above first", parsed.Problems[^1].Message);
    }

    /// <summary>What the layout of the plan finds reaches a person the same way.</summary>
    [Theory]
    [InlineData("along: [[2, 3], [2, 4]]", "along: [[2, 3], [2, 3]]", "18:9")]
    [InlineData("at: 1, width: 1.5", "width: 4.5", "14:9")]
    [InlineData("at: 1, width: 1.5", "at: 3, width: 1.5", "14:9")]
    [InlineData("- {room: den, side: south, at: 1, width: 1.5", "- {room: den, side: south, at: 2, width: 1.5, material: leaf}\n      - {room: den, side: south, at: 1, width: 1.5", "*")]
    [InlineData("outline: [[4, 0], [6, 0], [6, 5], [4, 5]]", "outline: [[4, 0], [6, 5], [6, 0], [4, 5]]", "10:9")]
    [InlineData("between: [den, hall]", "between: [den, hill]", "12:9")]
    public void A_plan_that_cannot_be_laid_out_is_reported_at_its_place(string from, string to, string place)
    {
        HouseParseResult parsed = HouseText.Read(HouseText.Good.Replace(from, to, StringComparison.Ordinal));
        Assert.Null(parsed.House);
        Problem mistake = Assert.Single(parsed.Problems, p => p.Severity == Severity.Error);
        Assert.True(place == "*" || mistake.ToString().StartsWith($"house.yaml:{place}: ", StringComparison.Ordinal), mistake.ToString());
    }

    [Fact]
    public void A_list_is_read_up_to_its_limit()
    {
        static string WithSpots(int count)
        {
            StringBuilder spots = new("spots:\n");
            for (int i = 0; i < count; i++)
            {
                spots.Append(System.Globalization.CultureInfo.InvariantCulture, $"  - {{name: s{i}, level: high, at: [1, 1, 1]}}\n");
            }

            int from = HouseText.Good.IndexOf("spots:", StringComparison.Ordinal), to = HouseText.Good.IndexOf("seats:", StringComparison.Ordinal);
            return HouseText.Good[..from] + spots + HouseText.Good[to..];
        }

        Assert.Empty(HouseText.Read(WithSpots(HouseLimits.MostSpots)).Problems);
        Problem problem = Assert.Single(HouseText.Read(WithSpots(HouseLimits.MostSpots + 1)).Problems);
        Assert.Contains("there are 201, and at most 200 are allowed", problem.Message, StringComparison.Ordinal);
    }

    private static string Only(string text)
    {
        HouseParseResult parsed = HouseText.Read(text);
        Assert.Null(parsed.House);
        return Assert.Single(parsed.Problems).ToString();
    }
}
