using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Plans;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Plans;

/// <summary>What a plan shows at known places, against the house that it was given.</summary>
public sealed class PlanInkTests
{
    private static readonly PictureSize Size = new(2000, 1700, 2.5);

    // No letters and no marks, which would stand in the way of what is looked for.
    private static readonly House House = SampleHouse.Make() with { Fixtures = [], Seats = [], Spots = [] };

    // What check is for: one figure mistyped by a metre must show where it is.
    [Fact]
    public void A_mistyped_wall_shows_where_the_mistake_is()
    {
        Level level = House.Levels[0];
        Wall wall = level.Walls[4], moved = wall with { End = wall.End + new Point2(0, 1) };
        House other = House with { Levels = [level with { Walls = [.. level.Walls.Select(w => w == wall ? moved : w)] }, .. House.Levels.Skip(1)] };
        var right = new Pixels(Render(House));
        var wrong = new Pixels(Render(other));
        PlanFrameOnPicture plan = right.Plan(House);

        // The wall runs from (0, 5.2) to (6.4, 5.2), or 6.2: across it at four tenths, where nothing else stands.
        Assert.True(DarkAcross(right, plan, new(2.56, 5.2)) && !DarkAcross(wrong, plan, new(2.56, 5.2)));
        Assert.True(DarkAcross(wrong, plan, new(2.56, 5.6)) && !DarkAcross(right, plan, new(2.56, 5.6)));
    }

    [Fact]
    public void Every_wall_of_a_level_stands_where_it_is_written_and_openings_are_gaps()
    {
        var picture = new Pixels(Render(House));
        PlanFrameOnPicture plan = picture.Plan(House);
        foreach (Wall wall in House.Levels[0].Walls)
        {
            foreach (Opening opening in wall.Openings.Where(o => o.Kind == OpeningKind.Gap))
            {
                Assert.False(DarkAcross(picture, plan, On(wall, opening.OffsetMetres + (opening.WidthMetres / 2))));
            }

            // At places clear of openings, ends and joints of other walls.
            for (double along = 0.25; along < wall.LengthMetres - 0.2; along += 0.1)
            {
                bool isClear = wall.Openings.All(o => along < o.OffsetMetres - 0.15 || along > o.OffsetMetres + o.WidthMetres + 0.15);
                if (isClear && wall.Name != "half wall")
                {
                    Assert.True(DarkAcross(picture, plan, On(wall, along)), $"{wall.Name} at {along} m");
                }
            }
        }

        static Point2 On(Wall wall, double along) => wall.Start + (along / wall.LengthMetres * (wall.End - wall.Start));
    }

    [Fact]
    public void Spots_and_seats_stand_where_they_are_written_and_look_where_they_face()
    {
        House marked = House with
        {
            Spots = [new Spot("", 0, new(8.6, 3.4), 1)],
            Seats = [new Seat("", 0, new(1.5, 2.2), 0.7, 0, 15), new Seat("", 0, new(4.5, 3.6), 0.7, 90, 15), new Seat("", 0, new(4.5, 1.0), 0.7, null, 15)],
        };
        var picture = new Pixels(Render(marked));
        PlanFrameOnPicture plan = picture.Plan(marked);

        // A full diamond of 5.5 points each way in the spot's colour, and no other patch of it.
        SKRectI spot = Assert.Single(picture.Patches(plan.Frame, IsSpots, 1));
        SKPointI middle = plan.At(8.6, 3.4);
        Assert.InRange(spot.MidX - middle.X, -2, 2);
        Assert.InRange(spot.MidY - middle.Y, -2, 2);
        Assert.InRange(spot.Width, 11 * 2.5, (11 * 2.5) + 4);

        // A ring of 4 points; the wedge reaches to 9 points on the side the player looks to.
        foreach (Seat seat in marked.Seats)
        {
            SKPointI at = plan.At(seat.Plan);
            Assert.Equal(Palette.Paper, picture[at]);
            Assert.True(Pixels.IsDark(picture[at.X + 8, at.Y]) && Pixels.IsDark(picture[at.X - 8, at.Y]));
            Assert.Equal(seat.FacingDegrees == 0, Pixels.IsDark(picture[at.X + 17, at.Y]));
            Assert.Equal(seat.FacingDegrees == 90, Pixels.IsDark(picture[at.X, at.Y - 17]));
            Assert.False(Pixels.IsDark(picture[at.X - 17, at.Y]) || Pixels.IsDark(picture[at.X, at.Y + 17]));
        }
    }

    [Fact]
    public void Things_without_a_name_have_no_label_and_those_with_one_do()
    {
        House plain = House with { Spots = [new Spot("", 0, new(8.6, 3.4), 1)] };
        House named = plain with { Spots = [plain.Spots[0] with { Name = "loft shelf" }] };

        // A label is a frame and letters in the spot's colour, beside the diamond.
        int Of(House house)
        {
            var picture = new Pixels(Render(house));
            PlanFrameOnPicture plan = picture.Plan(house);
            SKRectI mark = Pixels.About(plan.At(8.6, 3.4), 22);
            return picture.Where(plan.Frame, IsSpots).Count(at => !mark.Contains(at.X, at.Y));
        }

        Assert.Equal(0, Of(plain));
        Assert.InRange(Of(named), 200, 6000);
    }

    [Fact]
    public void A_house_of_one_empty_level_is_an_empty_frame()
    {
        House bare = House with { Levels = [new Level("bare", 0, 2.4)] };
        var picture = new Pixels(PlanPicture.Render(PlanRequest.OfAllLevels(bare, "Plan", ""), new PictureSize(400, 400, 1)));
        SKRectI frame = picture.Ground();
        frame.Inflate(-8, -8); // ticks reach in by less
        Assert.True(frame.Width > 100);
        Assert.Equal(1, picture.Share(frame, Palette.Ground));
    }

    // The spot's colour, softened edges too.
    private static bool IsSpots(SKColor colour) => colour.Red > colour.Green + 60 && colour.Red > colour.Blue + 40;

    private static byte[] Render(House house)
    {
        // Without names of rooms: they are letters.
        House nameless = house with
        {
            Levels = [.. house.Levels.Select(level => level with { Rooms = [.. level.Rooms.Select(room => room with { Name = "" })], Above = null })],
        };
        return PlanPicture.Render(PlanRequest.OfLevel(nameless, 0, "Plan", ""), Size);
    }

    // Whether a line across a wall, 0.2 m to each side, has at least two pixels of ink: its rims.
    private static bool DarkAcross(Pixels picture, PlanFrameOnPicture plan, Point2 at)
    {
        SKPointI middle = plan.At(at);
        int reach = (int)(0.2 * plan.PixelsPerMetre);
        return Enumerable.Range(-reach, (2 * reach) + 1).Count(d => Pixels.IsDark(picture[middle.X, middle.Y + d])) >= 2
            || Enumerable.Range(-reach, (2 * reach) + 1).Count(d => Pixels.IsDark(picture[middle.X + d, middle.Y])) >= 2;
    }
}
