using SkiaSharp;

namespace LinkMargin.Plots.Tests;

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

    [Fact]
    public void A_seat_that_is_short_and_one_that_asks_for_more_look_different()
    {
        byte[] plain = Render(new SpotBar(0, 12, 20, 28, true), 15);
        Assert.NotEqual(plain, Render(new SpotBar(0, 12, 20, 28, false), 15));
        Assert.NotEqual(plain, Render(new SpotBar(0, 12, 20, 28, true), 18));
        Assert.NotEqual(plain, Render(new SpotBar(0, 12, 24, 28, true), 15));
    }

    [Fact]
    public void Margins_far_out_long_names_and_no_spread_at_all_are_drawn_too()
    {
        Assert.NotEmpty(Render(new SpotBar(0, -400, -400, -400, false), 60));
        SpotsRequest request = Request(2, 2);
        string name = string.Concat(Enumerable.Repeat("a name that goes on and on ", 10));
        request = request with { Spots = [name, "b"], Seats = [request.Seats[0] with { Name = name, Detail = name }] };
        Assert.NotEmpty(SpotsPicture.Render(request, SpotsPicture.FittingSize(request)));
    }

    private static byte[] Render(SpotBar bar, double requiredDb)
    {
        SpotsRequest request = Request(1, 1) with { Seats = [new SpotsSeat("seat", "level", requiredDb, [bar])] };
        return SpotsPicture.Render(request, SpotsPicture.FittingSize(request));
    }

    private static SpotsRequest Request(int spots, int seats) => new(
        "seats and spots",
        "a caption",
        [.. Enumerable.Range(0, spots).Select(s => $"spot {s} (level)")],
        [.. Enumerable.Range(0, seats).Select(i => new SpotsSeat($"seat {i}", "level, asks for 15 dB", 15, [.. Enumerable.Range(0, spots).Select(s =>
            new SpotBar(s, 30 - (4 * s) - i, 37 - (4 * s) - i, 44 - (4 * s) - i, 30 - (4 * s) - i >= 15))]))])
    {
        Often = "nine times in ten",
    };
}
