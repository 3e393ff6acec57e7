using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Maps;
using LinkMargin.Shared;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Maps;

public class MapSheetTests
{
    private static readonly House House = SampleHouse.Make();

    [Fact]
    public void A_sheet_has_the_size_that_fits_and_our_mark()
    {
        SheetRequest request = Request();
        PictureSize size = MapSheet.FittingSize(request, pixelsPerPoint: 1);
        byte[] png = MapSheet.Render(request, size);
        using SKBitmap bitmap = SKBitmap.Decode(png);
        Assert.Equal((size.WidthPixels, size.HeightPixels), (bitmap.Width, bitmap.Height));
        Assert.True(PngMark.IsOn(png));
        Assert.True(size.WidthPixels > 3 * 300);
    }

    [Fact]
    public void The_same_sheet_drawn_by_many_threads_is_the_same_bytes()
    {
        SheetRequest request = Request();
        var size = new PictureSize(700, 560, 0.75);
        byte[] alone = MapSheet.Render(request, size);
        ParallelQuery<int> four = ParallelEnumerable.Range(0, 4).WithDegreeOfParallelism(4);
        byte[][] together = [.. four.Select(_ => MapSheet.Render(request, size))];
        Assert.All(together, png => Assert.Equal(alone, png));
    }

    [Fact]
    public void A_sheet_of_nothing_is_refused() =>
        Assert.Throws<ArgumentException>(() => MapSheet.Render(Request() with { Maps = [] }, new PictureSize(700, 560, 1)));

    private static SheetRequest Request() => new(
        House,
        [
            .. from spot in House.Spots
               from level in Enumerable.Range(0, House.Levels.Count)
               select new SheetMap(SampleField.Make(House, spot, level, 0.25), SampleField.SeatsOn(House, spot, level)),
        ],
        15,
        new ColourRange(-15, 50),
        "Margin from each spot",
        "Made-up margins for a test of drawing.");
}
