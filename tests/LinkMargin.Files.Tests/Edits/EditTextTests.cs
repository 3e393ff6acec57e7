using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Edits;
using LinkMargin.Files.Tests.Houses;

namespace LinkMargin.Files.Tests.Edits;

public sealed class EditTextTests
{
    private static readonly House House = HouseText.Read(HouseText.Good).House!;

    [Theory]
    [InlineData("opn door den door", "is not an edit; did you mean 'open'?")]
    [InlineData("", "is not an edit; write one of: open door NAME; ")]
    [InlineData("open dor den door", "is not an edit; did you mean 'open door'?")]
    [InlineData("move", "is not complete; write 'move spot NAME to X Y Z' or 'move seat NAME to X Y'")]
    [InlineData("open door", "does not say which door; ")]
    [InlineData("open door den dor", "finds no door 'den dor'; did you mean 'den door'?")]
    [InlineData("close door den door on hihg", "finds no level 'hihg'; did you mean 'high'?")]
    [InlineData("close door den door on high", "finds no door on the level 'high' named 'den door'; there are none yet")]
    [InlineData("remove fixture rak", "finds no fixture 'rak'; did you mean 'rack'?")]
    [InlineData("material stub = brik", "names the material 'brik', which is not in the material table; did you mean 'brick'?")]
    [InlineData("material stub brick", "needs '=' between the wall and its material")]
    [InlineData("material stab = brick", "finds no wall 'stab'; did you mean 'stub'?")]
    [InlineData("move spot shelf", "does not say where to; write 'move spot NAME to X Y Z'")]
    [InlineData("move spot shelf to 1 2", "goes to '1 2', which is not a position; write X Y Z, such as 3.2 5.5 1.6")]
    [InlineData("move spot shelf to 1 2 x", "goes to 'x', which is not a length; ")]
    [InlineData("move spot shelf to 1, 2", "goes to '1, 2', which is 2 lengths; write X Y Z, with a point as the decimal sign")]
    [InlineData("move spot shelf to 1 2 3", "goes to a height of 3 m, above the ceiling of the level 'high'; 0 m to 2.3 m is allowed")]
    [InlineData("move spot shelf to 1 9 1", "goes outside the level 'high', which reaches x from 0 to 6 m, y from 0 to 5 m")]
    [InlineData("move spot shelf to 1 2000 1", "goes to '2000' (2000 m), but -1000 m to 1000 m is allowed")]
    [InlineData("move spot shelf to 2 4.85 1 on low", "puts the spot inside the fixture 'screen', which is solid; choose another place")]
    [InlineData("move spot shelf to 1 1 1 on lw", "finds no level 'lw'; did you mean 'low'?")]
    [InlineData("move seat sofa to 1.75 4.85", "puts the seat at the centre of the fixture 'screen' it faces; choose another place")]
    [InlineData("turn seat sofa to nort", "turns to 'nort', which is not a direction; ")]
    [InlineData("turn seat sofa to 361", "turns to 361 degrees; -360 deg to 360 deg is allowed")]
    [InlineData("turn seat sofa to 1e400", "turns to '1e400', which is not a direction; ")]
    public void What_is_wrong_is_said_with_what_to_write(string text, string fault) =>
        Assert.StartsWith(fault, Assert.Throws<EditFaultException>(() => Read(text)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("move spot shelf to 1 2 1.5", 1, 2, 1.5)]
    [InlineData("move spot  'shelf'  to 1m 200 cm 1500mm", 1, 2, 1.5)]
    [InlineData("move spot shelf to 1, 2, 1.5", 1, 2, 1.5)]
    [InlineData("move spot shelf to 10 ft 6 in 5ft 0.5m", 3.2004, 1.524, 0.5)]
    [InlineData("move spot shelf to 10ft 6in, 5ft, 1/2in", 3.2004, 1.524, 0.0127)]
    public void Lengths_may_have_units_and_blanks(string text, double x, double y, double z)
    {
        var move = Assert.IsType<MoveSpot>(Read(text).Edit);
        Assert.Equal([x, y, z], [move.Plan.X, move.Plan.Y, move.HeightMetres], (a, b) => Math.Abs(a - b) < 1e-12);
    }

    [Fact]
    public void A_place_that_can_be_read_two_ways_is_refused() => // 1ft 2in, 3ft, 4in; or 1ft, 2in, 3ft 4in
        Assert.Contains("ambiguous", Assert.Throws<EditFaultException>(() => Read("move spot shelf to 1ft 2in 3ft 4in")).Message, StringComparison.Ordinal);

    [Fact]
    public void Bare_lengths_are_in_the_files_unit() => Assert.Equal(
        new MoveSpot("shelf", 1, new Point2(3 * 0.3048, 4 * 0.3048), 5 * 0.3048),
        new EditText(House, SmallTables.Tables, LengthUnit.Foot).Read("move spot shelf to 3 4 5").Edit);

    [Fact]
    public void A_wall_between_rooms_may_be_named_from_either_side() => Assert.Equal(
        new SetWallMaterial("den | hall", null, SmallTables.Tables.Materials["brick"]), Read("material hall | den = brick").Edit);

    [Fact]
    public void What_has_no_name_is_called_by_its_place() => Assert.Equal(
        new SetOpening("window south of den", null, true), Read("open window south of den").Edit);

    [Fact]
    public void What_changes_nothing_or_looks_odd_is_said()
    {
        Assert.Equal("the door 'den door' is open already, so this changes nothing", Read("open door den door").Warning);
        Assert.Null(Read("close door den door").Warning);
        Assert.Contains("solid fixture 'screen'", Read("move seat sofa to 2 4.85 0.9").Warning, StringComparison.Ordinal);
    }

    private static WrittenEdit Read(string text) => new EditText(House, SmallTables.Tables, LengthUnit.Metre).Read(text);
}
