using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Maps;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Maps;

/// <summary>What a map of the choice shows at known places.</summary>
public sealed class ChoiceInkTests
{
    private static readonly PictureSize Size = new(1000, 860, 1.25);
    private static readonly House House = SampleHouse.Make() with { Fixtures = [], Seats = [] };
    private static readonly Point2 Found = new(1.0, 1.5), Named = new(8.6, 3.4);

    [Fact]
    public void A_place_found_is_a_full_diamond_and_a_named_spot_a_hollow_one()
    {
        (Pixels picture, PlanFrameOnPicture plan) = Render(House, Mark(Found, false), Mark(Named, true));
        Assert.True(picture.Share(Pixels.About(plan.At(Found), 3), Palette.Spot) > 0.85); // but for the softened edge of its fill
        Assert.Equal(1, picture.Share(Pixels.About(plan.At(Named), 2), Palette.Paper));
        Assert.InRange(InSpotsColour(picture, Pixels.About(plan.At(Named), 8)), 20, 150); // its dashed rim

        (picture, plan) = Render(House, Mark(Found, false));
        Assert.Equal(0, InSpotsColour(picture, Pixels.About(plan.At(Named), 8)));
    }

    [Fact]
    public void A_zone_is_outlined_where_it_is_written_and_nothing_is_where_there_is_none()
    {
        var corners = new Point2[] { new(7.2, 1.0), new(9.4, 1.0), new(9.4, 2.4), new(7.2, 2.4) };
        House zoned = House with { Zones = [new Zone("shelf", 0, new Polygon(corners), [1])] };
        (Pixels with, PlanFrameOnPicture plan) = Render(zoned);
        (Pixels without, _) = Render(House);
        for (int side = 0; side < 4; side++)
        {
            for (double share = 0.05; share < 1; share += 0.1)
            {
                Point2 at = corners[side] + (share * (corners[(side + 1) % 4] - corners[side]));
                Assert.InRange(InSpotsColour(with, Pixels.About(plan.At(at), 1)), 2, 9);
            }
        }

        Assert.Equal(0, InSpotsColour(without, plan.Frame));
        Assert.Equal(0, InSpotsColour(with, plan.Box(7.3, 1.1, 9.3, 2.3)));
    }

    private static int InSpotsColour(Pixels picture, SKRectI box) =>
        picture.Where(box, c => c.Red > c.Green + 60 && c.Red > c.Blue + 40).Count();

    // No name and no figure, so that no label stands over a neighbour.
    private static ChoiceMark Mark(Point2 at, bool isNamed) => new(0, at, "", "", isNamed);

    private static (Pixels Picture, PlanFrameOnPicture Plan) Render(House house, params ChoiceMark[] marks)
    {
        // 3 dB all over: one tone, pale and not reddish, no line and no hatch.
        var grid = new Grid(new(0, 0), 0.1, 102, 76);
        var field = new Field(house.Spots[0], 0, 0.7, grid, [.. Enumerable.Repeat(3.0, grid.Count)]);
        var request = new ChoiceRequest(house, [field], marks, "Title", "Caption");
        var picture = new Pixels(ChoicePicture.Render(request, Size));
        return (picture, picture.Plan(house));
    }
}
