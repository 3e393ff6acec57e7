using System.Globalization;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Paths;
using LinkMargin.Shared;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Paths;

public class PathsPictureTests
{
    private static readonly House House = SampleHouse.Make();
    private static readonly LinkModel Model = new(House);

    public static TheoryData<int, int> Links
    {
        get
        {
            var links = new TheoryData<int, int>();
            for (int spot = 0; spot < House.Spots.Count; spot++)
            {
                for (int seat = 0; seat < House.Seats.Count; seat++)
                {
                    links.Add(spot, seat);
                }
            }

            return links;
        }
    }

    [Theory]
    [MemberData(nameof(Links))]
    public void The_paths_of_every_link_have_the_size_that_fits_and_our_mark(int spot, int seat)
    {
        PathsRequest request = RequestFor(House.Spots[spot], House.Seats[seat]);
        PictureSize size = PathsPicture.FittingSize(request, pixelsPerPoint: 1);
        byte[] png = PathsPicture.Render(request, size);
        using SKBitmap bitmap = SKBitmap.Decode(png);

        Assert.Equal((size.WidthPixels, size.HeightPixels), (bitmap.Width, bitmap.Height));
        Assert.True(PngMark.IsOn(png));
    }

    [Fact]
    public void The_same_paths_drawn_twice_are_the_same_bytes()
    {
        PathsRequest request = RequestFor(House.Spots[0], House.Seats[0]);
        var size = new PictureSize(800, 900, 1);

        Assert.Equal(PathsPicture.Render(request, size), PathsPicture.Render(request, size));
    }

    [Fact]
    public void A_link_over_more_levels_is_a_wider_picture()
    {
        Spot spot = House.Spots[0];
        Seat here = House.Seats.First(seat => seat.LevelIndex == spot.LevelIndex);
        PathsRequest one = RequestFor(spot, here);
        one = one with { Paths = [.. one.Paths.Where(entry => entry.Path.Path.Kind == PathKind.Direct)] };
        PathsRequest two = RequestFor(spot, House.Seats.First(seat => seat.LevelIndex != spot.LevelIndex));

        Assert.True(
            PathsPicture.FittingSize(two, planPoints: 300).WidthPixels > PathsPicture.FittingSize(one, planPoints: 300).WidthPixels);
    }

    // The largest patch of the paths' colour is the spot's diamond, 11 points wide, with the seat's disc of ink on it in one place
    // and beside it none where the seat is over it on another plan.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Ends_in_one_place_and_ends_over_one_another_are_marked_on_each_plan(int level)
    {
        Spot spot = House.Spots[0];
        var seat = new Seat("same", level, spot.Plan, spot.HeightMetres, 90, 15);
        PathsRequest request = RequestFor(spot, seat) with { Occupied = [] };
        var picture = new Pixels(PathsPicture.Render(request, PathsPicture.FittingSize(request, pixelsPerPoint: 2)));
        SKRectI ground = picture.UpperGround();
        int[] discs =
        [
            .. picture.Patches(ground, c => c == Palette.Ink, 60)
                .Where(p => p.Width is > 12 and < 18 && p.Height is > 12 and < 18).Select(p => p.MidX),
        ];
        Assert.Single(discs);
        Assert.True(level == 0 || discs[0] > ground.MidX, "on the plan of its own level, right of the spot's");
    }

    // One straight path on one level: it runs from mark to mark and nothing of its colour lies beside it.
    [Fact]
    public void A_straight_path_runs_from_the_spot_to_the_seat()
    {
        Spot spot = new("", 0, new(0.3, 0.3), 1);
        Seat seat = new("", 0, new(4.3, 3.3), 1, null, 15);
        PathsRequest request = RequestFor(spot, seat) with { Occupied = [], House = House with { Fixtures = [] } };
        request = request with { Paths = [request.Paths.Single(entry => entry.Path.Path.Kind == PathKind.Direct)] };
        var picture = new Pixels(PathsPicture.Render(request, PathsPicture.FittingSize(request, pixelsPerPoint: 2)));
        SKRectI ground = picture.UpperGround();
        bool IsPath(SKColor c) => c.Red > c.Green + 60 && c.Red > c.Blue + 40;
        SKRectI line = Pixels.BoxOf(picture.Where(ground, IsPath));

        // A line of 3 to 4: from the diamond's corner, 5.5 points beyond the spot, to the rim of the seat's disc, 5.2 points short.
        double scale = (line.Width - (11 - 5.2)) / 4.0;
        Assert.InRange((line.Height - (11 - 5.2)) / scale, 2.9, 3.1);
        SKPointI[] beside =
        [
            .. picture.Where(ground, IsPath).Where(at =>
                Math.Abs((3.0 * (at.X - line.Left - 11)) - (4.0 * (line.Bottom - 11 - at.Y))) / 5 > 30),
        ];
        Assert.Empty(beside);
        int met = Enumerable.Range(1, 18).Count(i => picture.Where(
            Pixels.About(new(line.Left + 11 + (int)(i / 20.0 * 4 * scale), line.Bottom - 11 - (int)(i / 20.0 * 3 * scale)), 3), IsPath).Any());
        Assert.InRange(met, 15, 18); // the rest is under the path's number
    }

    [Fact]
    public void A_picture_needs_a_path()
    {
        PathsRequest request = RequestFor(House.Spots[0], House.Seats[0]) with { Paths = [] };

        Assert.Throws<ArgumentException>(() => PathsPicture.Render(request, new PictureSize(800, 900, 1)));
    }

    [Theory]
    [MemberData(nameof(Links))]
    public void No_number_covers_another_or_a_mark(int spot, int seat)
    {
        PathsRequest request = RequestFor(House.Spots[spot], House.Seats[seat]);
        PlanView view = PlanPlot.ViewIn(new(0, 0, 1000, 1000), PlanBounds.Of(House), 2.5);
        IReadOnlyList<DrawnPath> drawn = PathsPicture.Drawn(request, view);
        for (int level = 0; level < House.Levels.Count; level++)
        {
            LabelBox[] marks = [NumberBadge.BoxAt(view.PixelX(request.Seat.Plan.X), view.PixelY(request.Seat.Plan.Y), 2.5)];
            LabelBox[] numbers = [.. new PathNumbers(view, level, drawn, marks, []).Taken];

            Assert.All(numbers, (box, i) => Assert.DoesNotContain(numbers.Where((_, j) => j != i), box.Overlaps));
            Assert.All(numbers, box => Assert.DoesNotContain(marks, box.Overlaps));
            Assert.All(drawn.Where(path => path.Track.Parts.Any(part => part.LevelIndex == level)), _ => Assert.NotEmpty(numbers));
        }
    }

    [Theory]
    [MemberData(nameof(Links))]
    public void Every_path_lies_on_the_ground_that_is_shown(int spot, int seat)
    {
        PathsRequest request = RequestFor(House.Spots[spot], House.Seats[seat]);
        PlanBounds ground = PathsGround.Of(request), house = PlanBounds.Of(House);

        Assert.All(request.Paths.SelectMany(entry => entry.Path.Path.Points), point =>
        {
            Assert.InRange(point.X, ground.Least.X, ground.Greatest.X);
            Assert.InRange(point.Y, ground.Least.Y, ground.Greatest.Y);
        });
        Assert.InRange(ground.HeightMetres / ground.WidthMetres, 0.74, 1.51);
        Assert.True(ground.WidthMetres <= house.WidthMetres && ground.HeightMetres <= house.HeightMetres);
    }

    private static PathsRequest RequestFor(Spot spot, Seat seat)
    {
        LinkBudget budget = LinkEvaluation.Budget(Model, spot, seat);
        return new PathsRequest(
            House,
            spot,
            seat,
            [.. budget.Paths.Select((path, i) => new PathEntry(
                i + 1, path, budget.ShareOf(path), $"way {i}", "1.00 m", path.LossDb.ToString("0.0", CultureInfo.InvariantCulture), "1.0 %"))],
            "60.0",
            "Paths",
            "A test of drawing.")
        {
            Occupied = [House.Seats[^1]],
            NotDrawn = "Left out: nothing.",
        };
    }
}
