using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Changes;
using LinkMargin.Files.Tests.Houses;

namespace LinkMargin.Files.Tests.Changes;

public sealed class ChangeWordsTests
{
    private static readonly House House = HouseText.Read(HouseText.Good).House!;

    /// <summary>A step of a journal is put into words even if the file has changed so that it can no longer be made.</summary>
    [Theory]
    [InlineData("den door", "open den door on low")]
    [InlineData("window south of den", "open window south of den on low")]
    [InlineData("gap east of hall", "open gap east of hall on low")]
    [InlineData("no longer there", "open door no longer there on low")]
    public void An_opening_is_named_with_its_kind_once(string name, string words) =>
        Assert.Equal(words, ChangeWords.Of(new HouseChange(ChangeKinds.SetOpening) { Name = name, Level = 0, Open = true }, House, LengthUnit.Metre));

    [Fact]
    public void A_side_of_a_fixture_is_called_a_side()
    {
        var open = new HouseChange(ChangeKinds.OpenSide) { Name = "rack", Side = "north" };
        Assert.Equal("open the north side of rack", ChangeWords.Of(open, House, LengthUnit.Metre));
        Assert.Equal("make the north side of rack of mesh", ChangeWords.Of(open with { Kind = ChangeKinds.SwapSide, Material = "mesh" }, House, LengthUnit.Metre));
    }
}
