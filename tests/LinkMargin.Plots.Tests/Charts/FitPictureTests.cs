using LinkMargin.Plots.Charts;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Charts;

public sealed class FitPictureTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void A_panel_for_each_law_fits_its_sheet_and_the_same_request_gives_the_same_picture(int panels)
    {
        FitRequest request = Request(panels);
        PictureSize size = FitPicture.FittingSize(request);
        byte[] png = FitPicture.Render(request, size);
        using SKBitmap bitmap = SKBitmap.Decode(png);
        Assert.Equal((size.WidthPixels, size.HeightPixels), (bitmap.Width, bitmap.Height));
        Assert.Equal(png, FitPicture.Render(request, size));
    }

    private static FitRequest Request(int panels) => new(
        "levels read",
        "a caption",
        [
            .. Enumerable.Range(0, panels).Select(k => new FitPanel($"law {k}", "rms 3 dB", [.. Enumerable.Range(0, 12).Select(i =>
                new FitPoint(-45 - (3 * i), -44 - (3 * i) + (k * (i % 3)), i != 5, i == 3, i == 3 ? "spot to seat" : null))])),
        ])
    {
        NoiseDb = 4.5,
    };
}
