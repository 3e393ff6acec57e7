using LinkMargin.Plots.Charts;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Charts;

public sealed class SpotsPictureTests
{
    [Theory]
    [InlineData(1, 1)]
    [InlineData(4, 7)]
    [InlineData(13, 30)]
    public void Any_number_of_spots_and_seats_fits_its_sheet_and_the_same_request_gives_the_same_picture(int spots, int seats)
    {
        SpotsRequest request = Request(spots, seats);
        PictureSize size = SpotsPicture.FittingSize(request);
        byte[] png = SpotsPicture.Render(request, size);
        using SKBitmap bitmap = SKBitmap.Decode(png);
        Assert.Equal((size.WidthPixels, size.HeightPixels), (bitmap.Width, bitmap.Height));
        Assert.Equal(png, SpotsPicture.Render(request, size));
    }

    private static SpotsRequest Request(int spots, int seats) => new(
        "seats and spots",
        "a caption",
        [.. Enumerable.Range(0, spots).Select(s => $"spot {s} (level)")],
        [.. Enumerable.Range(0, seats).Select(i => new SpotsSeat($"seat {i}", "level, asks for 15 dB", 15, [.. Enumerable.Range(0, spots).Select(s =>
            new SpotBar(s, 30 - (4 * s) - i, 37 - (4 * s) - i, 44 - (4 * s) - i, 30 - (4 * s) - i >= 15))]))])
    {
        Reached = "reached with 90 % confidence",
    };
}
