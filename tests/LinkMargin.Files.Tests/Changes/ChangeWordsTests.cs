using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Changes;
using LinkMargin.Files.Edits;
using LinkMargin.Files.Tests.Houses;

namespace LinkMargin.Files.Tests.Changes;

public sealed class ChangeWordsTests
{
    private static readonly House House = HouseText.Read(HouseText.Good).House!;

    /// <summary>A step of a journal is put into words even if the file has changed so that it can no longer be made.</summary>
    [Theory]
    [InlineData("den door", "'den door' on low is open")]
    [InlineData("window south of den", "'window south of den' on low is open")]
    [InlineData("gap east of hall", "'gap east of hall' on low is open")]
    [InlineData("no longer there", "door 'no longer there' on low is open")]
    public void An_opening_is_named_with_its_kind_once(string name, string words) =>
        Assert.Equal(words, ChangeWords.Of(new HouseChange(ChangeKinds.SetOpening) { Name = name, Level = 0, Open = true }, House, LengthUnit.Metre));

    /// <summary>An edit of the command line is said as the same step of the page: as what is then so.</summary>
    [Theory]
    [InlineData("close door den door", "'den door' is shut")]
    [InlineData("close door den door on low", "'den door' on low is shut")]
    [InlineData("remove fixture rack", "fixture 'rack' is removed")]
    [InlineData("move spot shelf to 1 2 1.5", "spot 'shelf' is at 1.00 m east, 2.00 m north, 1.50 m high on high")]
    [InlineData("turn seat sofa to -90", "seat 'sofa' faces south")]
    [InlineData("turn seat sofa to 20", "seat 'sofa' faces 20° anticlockwise from east")]
    public void An_edit_is_said_as_what_is_then_so(string written, string words) =>
        Assert.Equal(words, ChangeWords.Of(new EditText(House, SmallTables.Tables, LengthUnit.Metre).Read(written).Edit, House, LengthUnit.Metre));

    [Fact]
    public void A_side_of_a_fixture_is_called_a_side()
    {
        var open = new HouseChange(ChangeKinds.OpenSide) { Name = "rack", Side = "north" };
        Assert.Equal("the north side of 'rack' is open", ChangeWords.Of(open, House, LengthUnit.Metre));
        Assert.Equal("the north side of 'rack' is of mesh", ChangeWords.Of(open with { Kind = ChangeKinds.SwapSide, Material = "mesh" }, House, LengthUnit.Metre));
    }
}
