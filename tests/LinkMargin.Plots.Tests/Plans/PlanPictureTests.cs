using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Plans;
using LinkMargin.Shared;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Plans;

public class PlanPictureTests
{
    private static readonly House House = SampleHouse.Make();

    [Theory]
    [InlineData(LengthUnit.Metre)]
    [InlineData(LengthUnit.Foot)]
    public void A_plan_of_all_levels_has_the_size_that_fits_and_our_mark(LengthUnit unit)
    {
        PlanRequest request = PlanRequest.OfAllLevels(House, "Plan", "A test of drawing.") with { Unit = unit };
        PictureSize size = PlanPicture.FittingSize(request, pixelsPerPoint: 1);
        byte[] png = PlanPicture.Render(request, size);
        using SKBitmap bitmap = SKBitmap.Decode(png);
        Assert.Equal((size.WidthPixels, size.HeightPixels), (bitmap.Width, bitmap.Height));
        Assert.True(PngMark.IsOn(png));
    }

    [Fact]
    public void The_same_plan_drawn_twice_is_the_same_bytes()
    {
        PlanRequest request = PlanRequest.OfLevel(House, 1, "Plan", "A test of drawing.");
        var size = new PictureSize(800, 700, 1);
        Assert.Equal(PlanPicture.Render(request, size), PlanPicture.Render(request, size));
    }
}
