using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Maps;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Maps;

/// <summary>Where maps stand on a sheet.</summary>
public sealed class SheetInkTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(2, 1)]
    [InlineData(1, 2)]
    public void A_map_that_is_not_there_leaves_its_place_blank_and_no_other(int spot, int level)
    {
        House house = SampleHouse.Make();
        SheetMap[] maps =
        [
            .. from s in house.Spots
               from l in Enumerable.Range(0, house.Levels.Count)
               select new SheetMap(SampleField.Make(house, s, l, 0.25), []),
        ];
        var request = new SheetRequest(house, maps, 15, new ColourRange(-15, 50), "Title", "Caption");
        var size = new PictureSize(1000, 840, 1);
        var full = new Pixels(MapSheet.Render(request, size));
        SheetMap absent = maps[(spot * house.Levels.Count) + level];
        var holed = new Pixels(MapSheet.Render(request with { Maps = [.. maps.Where(m => m != absent)] }, size));

        // Spots from left to right, the highest level on top: thirds of the ground that all maps stand on.
        SKRectI sheet = full.Ground();
        int row = house.Levels.Count - 1 - level;
        SKRectI changed = Pixels.BoxOf(
            from y in Enumerable.Range(sheet.Top, sheet.Height)
            from x in Enumerable.Range(sheet.Left, sheet.Width)
            where full[x, y] != holed[x, y]
            select new SKPointI(x, y));
        Assert.InRange(changed.Left, sheet.Left + (spot * sheet.Width / 3.0), sheet.Left + ((spot + 0.35) * sheet.Width / 3));
        Assert.InRange(changed.Right, sheet.Left + ((spot + 0.65) * sheet.Width / 3), sheet.Left + ((spot + 1) * sheet.Width / 3.0) + 1);
        Assert.InRange(changed.Top, sheet.Top + (row * sheet.Height / 3.0), sheet.Top + ((row + 0.35) * sheet.Height / 3));
        Assert.InRange(changed.Bottom, sheet.Top + ((row + 0.65) * sheet.Height / 3), sheet.Top + ((row + 1) * sheet.Height / 3.0) + 1);

        // Blank but for the frame.
        changed.Inflate(-3, -3);
        Assert.InRange(holed.Share(changed, Palette.Ground), 0.99, 1);
        Assert.InRange(full.Share(changed, Palette.Ground), 0, 0.3);
    }
}
