using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Maps;
using LinkMargin.Shared;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Maps;

public class ChoicePictureTests
{
    private static readonly House House = SampleHouse.Make();

    [Fact]
    public void It_has_the_size_that_fits_all_levels_side_by_side_and_our_mark()
    {
        ChoiceRequest request = Request();
        PictureSize size = ChoicePicture.FittingSize(request, pixelsPerPoint: 1), one = ChoicePicture.FittingSize(request with { Fields = [request.Fields[0]] }, 400, 1);
        byte[] png = ChoicePicture.Render(request, size);
        using SKBitmap bitmap = SKBitmap.Decode(png);
        Assert.Equal((size.WidthPixels, size.HeightPixels), (bitmap.Width, bitmap.Height));
        Assert.True(PngMark.IsOn(png));
        Assert.True(House.Levels.Count > 1 && size.WidthPixels > one.WidthPixels);
    }

    [Fact]
    public void A_picture_of_no_level_is_refused() =>
        Assert.Throws<ArgumentException>(() => Render(Request() with { Fields = [] }));

    private static byte[] Render(ChoiceRequest request) => ChoicePicture.Render(request, new PictureSize(900, 560, 0.75));

    private static ChoiceRequest Request()
    {
        Spot spot = House.Spots[0];
        return new ChoiceRequest(
            House,
            [.. Enumerable.Range(0, House.Levels.Count).Select(level => SampleField.Make(House, spot, level, 0.25))],
            [
                new ChoiceMark(spot.LevelIndex, House.Levels[spot.LevelIndex].Rooms[0].Outline.Least, "place 1", "+4.2", IsNamed: false),
                new ChoiceMark(spot.LevelIndex, spot.Plan, spot.Name, "-3.0", IsNamed: true),
            ],
            "The worst seat with a console anywhere",
            "Made-up figures for a test of drawing.");
    }
}
