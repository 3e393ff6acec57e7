using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Png;
using SkiaSharp;

namespace LinkMargin.Plots.Tests;

public class PlanPictureTests
{
    private static readonly House House = SampleHouse.Make();

    [Theory]
    [InlineData(LengthUnit.Metres)]
    [InlineData(LengthUnit.Feet)]
    public void A_plan_of_all_levels_has_the_size_that_fits_and_our_mark(LengthUnit unit)
    {
        PlanRequest request = PlanRequest.OfAllLevels(House, "Plan", "A test of drawing.") with { Unit = unit };
        PictureSize size = PlanPicture.FittingSize(request, pixelsPerPoint: 1);
        byte[] png = PlanPicture.Render(request, size);
        using SKBitmap bitmap = SKBitmap.Decode(png);
        Assert.Equal((size.WidthPixels, size.HeightPixels), (bitmap.Width, bitmap.Height));
        Assert.True(PngChunks.IsOurs(png));
    }

    [Fact]
    public void The_same_plan_drawn_twice_is_the_same_bytes()
    {
        PlanRequest request = PlanRequest.OfLevel(House, 1, "Plan", "A test of drawing.");
        var size = new PictureSize(800, 700, 1);
        Assert.Equal(PlanPicture.Render(request, size), PlanPicture.Render(request, size));
    }

    // What check is for: one figure mistyped by a metre must change the picture.
    [Fact]
    public void A_mistyped_wall_changes_the_plan()
    {
        Level level = House.Levels[0];
        Wall wall = level.Walls[4], moved = wall with { End = wall.End + new Point2(0, 1) };
        Level mistyped = level with { Walls = [.. level.Walls.Select(w => w == wall ? moved : w)] };
        House other = House with { Levels = [mistyped, .. House.Levels.Skip(1)] };
        var size = new PictureSize(800, 700, 1);
        Assert.NotEqual(
            PlanPicture.Render(PlanRequest.OfLevel(House, 0, "Plan", ""), size),
            PlanPicture.Render(PlanRequest.OfLevel(other, 0, "Plan", ""), size));
    }

    [Fact]
    public void Things_without_a_name_are_drawn_without_a_label()
    {
        House nameless = House with
        {
            Fixtures = [.. House.Fixtures.Select(f => f with { Name = " " })],
            Seats = [.. House.Seats.Select(s => s with { Name = "" })],
        };
        Assert.NotEmpty(PlanPicture.Render(PlanRequest.OfLevel(nameless, 0, "", ""), new PictureSize(400, 400, 1)));
    }

    [Fact]
    public void A_house_of_one_empty_level_is_drawn()
    {
        House bare = House with { Levels = [new Level("bare", 0, 2.4)], Fixtures = [], Spots = [], Seats = [] };
        Assert.NotEmpty(PlanPicture.Render(PlanRequest.OfAllLevels(bare, "Plan", ""), new PictureSize(400, 400, 1)));
    }
}
