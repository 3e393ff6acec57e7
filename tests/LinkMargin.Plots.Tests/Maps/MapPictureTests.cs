using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Maps;
using LinkMargin.Shared;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Maps;

public class MapPictureTests
{
    private static readonly House House = SampleHouse.Make();

    [Fact]
    public void A_map_has_the_size_asked_for_and_our_mark()
    {
        byte[] png = MapPicture.Render(Request(0), new PictureSize(900, 700, 1.25));
        using SKBitmap bitmap = SKBitmap.Decode(png);
        Assert.Equal((900, 700), (bitmap.Width, bitmap.Height));
        Assert.True(PngMark.IsOn(png));
    }

    [Fact]
    public void The_same_map_drawn_twice_is_the_same_bytes()
    {
        var size = new PictureSize(900, 700, 1.25);
        Assert.Equal(MapPicture.Render(Request(1), size), MapPicture.Render(Request(1), size));
    }

    [Theory]
    [InlineData(280, 280)]
    [InlineData(280, 1500)]
    [InlineData(1500, 280)]
    public void Odd_sizes_down_to_the_least_are_drawn(int width, int height)
    {
        using SKBitmap bitmap = SKBitmap.Decode(MapPicture.Render(Request(0), new PictureSize(width, height, 1)));
        Assert.Equal((width, height), (bitmap.Width, bitmap.Height));
    }

    [Theory]
    [InlineData(279, 300, 1)]
    [InlineData(300, 279, 1)]
    [InlineData(20_001, 300, 1)]
    [InlineData(300, 300, 0.4)]
    [InlineData(5000, 5000, double.NaN)]
    public void Sizes_outside_the_limits_are_refused(int width, int height, double pixelsPerPoint) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new PictureSize(width, height, pixelsPerPoint));

    [Fact]
    public void A_field_with_a_margin_missing_is_refused()
    {
        MapRequest request = Request(0);
        Field broken = request.Field with { MarginDb = [.. request.Field.MarginDb.Skip(1)] };
        Assert.Throws<ArgumentException>(() => MapPicture.Render(request with { Field = broken }, new PictureSize(600, 500, 1)));
    }

    // A field of 20 dB all over has one tone whatever is required of it; only the hatch can tell, as it must on a grey print.
    [Fact]
    public void Ground_below_the_required_margin_carries_more_ink()
    {
        MapRequest request = Request(0) with { Seats = [] };
        Field level = request.Field with { MarginDb = [.. request.Field.MarginDb.Select(_ => 20.0)] };
        MapRequest flat = request with { Field = level };
        Assert.True(MeanGreenInRoom(flat with { RequiredDb = 30 }) < MeanGreenInRoom(flat with { RequiredDb = 10 }) - 4);
    }

    // The south-west quarter of the games den, clear of fixtures and labels.
    private static double MeanGreenInRoom(MapRequest request)
    {
        using SKBitmap bitmap = SKBitmap.Decode(MapPicture.Render(request, new PictureSize(900, 720, 1.25)));
        IEnumerable<SKColor> square = Enumerable.Range(150, 60).SelectMany(x => Enumerable.Range(370, 60), bitmap.GetPixel);
        return square.Average(c => (double)c.Green);
    }

    internal static MapRequest Request(int levelIndex)
    {
        Spot spot = House.Spots[0];
        return new(
            House,
            SampleField.Make(House, spot, levelIndex),
            SampleField.SeatsOn(House, spot, levelIndex),
            15,
            new ColourRange(-15, 50),
            $"Margin from {spot.Name}, on level {House.Levels[levelIndex].Name}",
            "Made-up margins for a test of drawing.");
    }
}
