using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Maps;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Maps;

/// <summary>What a map shows at known places, against the field that it was given.</summary>
public sealed class MapInkTests
{
    private static readonly PictureSize Size = new(1000, 820, 1.25);

    // No names, seats or things: what is left is the field, its lines and the walls.
    private static readonly House House = SampleHouse.Make() with { Fixtures = [], Seats = [] };

    // Clear of walls in the games den, which is 6.4 m by 5.2 m, and of its room's name and half-height wall.
    private static readonly Point2[] Clear = [new(0.8, 0.8), new(1.6, 0.9), new(4.2, 0.8), new(5.6, 1.2), new(0.9, 4.4), new(5.6, 4.6), new(4.4, 4.5)];

    [Fact]
    public void A_place_has_the_tone_of_its_fields_margin()
    {
        // A field by the formula 9·x − 4·y + 3, which a smoothing of the surface leaves as it is.
        var map = new Pixels(MapPicture.Render(Request(p => (9 * p.X) - (4 * p.Y) + 3, requiredDb: -14), Size));
        PlanFrameOnPicture plan = map.Plan(House);
        int seen = 0;
        for (double x = 0.5; x < 6; x += 0.25)
        {
            for (double y = 0.5; y < 4.8; y += 0.25)
            {
                double margin = (9 * x) - (4 * y) + 3, share = margin / 5;

                // Away from lines of equal margin, where the tone changes and figures stand.
                if (Math.Abs(share - Math.Round(share)) < 0.3 || margin is < -8 or > 43)
                {
                    continue;
                }

                SKColor expected = ToneOf(margin);
                seen += map.Share(Pixels.About(plan.At(x, y), 2), expected) > 0.9 ? 1 : 0;
                SKColor[] others = [ToneOf(margin - 5), ToneOf(margin + 5)];
                Assert.All(others, other => Assert.InRange(map.Share(Pixels.About(plan.At(x, y), 1), other), 0, 0.34));
            }
        }

        Assert.InRange(seen, 90, int.MaxValue); // of some 120; the rest is under figures, the name of the room and the low wall
    }

    [Fact]
    public void The_heavy_line_is_where_the_field_has_the_required_margin()
    {
        // 15 dB at x = 2.0 m; the next lines stand 0.5 m away on both sides.
        var map = new Pixels(MapPicture.Render(Request(p => (10 * p.X) - 5, requiredDb: 15), Size));
        PlanFrameOnPicture plan = map.Plan(House);
        int found = 0;
        for (double y = 2; y < 4.8; y += 0.1)
        {
            // As wide as 2.4 points, 3 pixels; other lines are thinner than 1.2 points.
            SKPointI from = plan.At(1.2, y), to = plan.At(2.3, y);
            int[] ink = [.. Enumerable.Range(from.X, to.X - from.X).Where(x => map[x, from.Y] == Palette.Ink)];
            if (ink.Length >= 2)
            {
                Assert.InRange(ink.Average() + 0.5 - plan.At(2.0, y).X, -2, 2);
                Assert.True(ink[^1] - ink[0] <= 4);
                found++;
            }
        }

        Assert.InRange(found, 20, 28); // the rest is in the gap for its figure
    }

    [Fact]
    public void Ground_below_the_required_margin_is_hatched_and_no_other()
    {
        var map = new Pixels(MapPicture.Render(Request(p => (10 * p.X) - 5, requiredDb: 35), Size));
        PlanFrameOnPicture plan = map.Plan(House);

        // Strokes of 0.75 points with an edge to 1.6 points, every 5 points: a third of the ground is not the tone.
        foreach ((double x, double y, bool isBelow) in new[] { (1.75, 4.5, true), (2.75, 4.5, true), (1.75, 2.0, true), (4.75, 4.5, false), (5.25, 1.5, false) })
        {
            double other = 1 - map.Share(plan.Box(x - 0.18, y - 0.3, x + 0.18, y + 0.3), ToneOf((10 * x) - 5));
            Assert.InRange(other, isBelow ? 0.2 : 0, isBelow ? 0.5 : 0.02);
        }
    }

    public static TheoryData<bool> Emptiness => [true, false];

    [Theory]
    [MemberData(nameof(Emptiness))]
    public void A_map_without_a_value_is_a_bare_plan(bool hasCells)
    {
        MapRequest request = Request(_ => double.NaN, requiredDb: 15);
        Field field = hasCells ? request.Field : request.Field with { Grid = new Grid(new(0, 0), 0.1, 0, 0), MarginDb = [] };
        var map = new Pixels(MapPicture.Render(request with { Field = field }, Size));
        PlanFrameOnPicture plan = map.Plan(House);
        Assert.All(Clear, at => Assert.Equal(1, map.Share(Pixels.About(plan.At(at), 6), Palette.Paper)));
        for (double margin = -12.5; margin < 50; margin += 5)
        {
            Assert.Equal(0, map.Share(plan.Frame, ToneOf(margin)));
        }

        // Walls stand all the same: on the middle of the south wall, clear of its windows.
        Assert.True(map.Share(Pixels.About(plan.At(5, 0), 2), Pixels.IsDark) > 0.9);
    }

    [Fact]
    public void A_level_of_walls_without_rooms_is_covered_wherever_the_field_reaches()
    {
        House walls = House with { Levels = [.. House.Levels.Select(l => l with { Rooms = [] })] };
        MapRequest request = Request(_ => 22, requiredDb: -14);
        var grid = new Grid(new(-0.4, -0.4), 0.1, 110, 84);
        Field everywhere = request.Field with { Grid = grid, MarginDb = [.. Enumerable.Repeat(22.0, grid.Count)] };
        var map = new Pixels(MapPicture.Render(request with { House = walls, Field = everywhere }, Size));
        PlanFrameOnPicture plan = map.Plan(House);

        // Outside the south wall and inside it alike; beyond the grid is ground.
        Assert.All(Clear.Append(new(5, -0.25)), at => Assert.Equal(1, map.Share(Pixels.About(plan.At(at), 2), ToneOf(22))));
        Assert.Equal(1, map.Share(Pixels.About(plan.At(5, -0.52), 2), Palette.Ground));
    }

    [Fact]
    public void Nothing_of_the_field_is_drawn_beyond_the_rooms()
    {
        MapRequest request = Request(_ => 22, requiredDb: -14);
        var grid = new Grid(new(-0.6, -0.6), 0.1, 114, 88);
        Field everywhere = request.Field with { Grid = grid, MarginDb = [.. Enumerable.Repeat(22.0, grid.Count)] };
        var map = new Pixels(MapPicture.Render(request with { Field = everywhere }, Size));
        PlanFrameOnPicture plan = map.Plan(House);
        SKRectI house = plan.Box(0, 0, 10.2, 7.6);
        Assert.True(map.Share(house, ToneOf(22)) > 0.8);
        Assert.DoesNotContain(map.Where(plan.Frame, c => c == ToneOf(22)), at => !house.Contains(at.X, at.Y));
    }

    // The middle of the step of 5 dB, over the range from −15 to 50 dB.
    private static SKColor ToneOf(double margin) => ColourScale.At(((5 * Math.Floor(margin / 5)) + 2.5 + 15) / 65);

    private static MapRequest Request(Func<Point2, double> margin, double requiredDb)
    {
        var grid = new Grid(new(0, 0), 0.1, 102, 76);
        double[] margins = new double[grid.Count];
        for (int row = 0; row < grid.Rows; row++)
        {
            for (int column = 0; column < grid.Columns; column++)
            {
                margins[(row * grid.Columns) + column] = margin(grid.CentreOf(column, row));
            }
        }

        return new MapRequest(
            House, new Field(House.Spots[0] with { Name = "" }, 0, 0.7, grid, margins), [], requiredDb, new ColourRange(-15, 50), "Title", "Caption");
    }
}
