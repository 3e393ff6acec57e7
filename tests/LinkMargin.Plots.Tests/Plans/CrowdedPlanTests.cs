using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Building;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Plans;

namespace LinkMargin.Plots.Tests.Plans;

/// <summary>Plans with more names than there is room for.</summary>
public class CrowdedPlanTests
{
    private static readonly House Plain = SampleHouse.Make();

    /// <summary>Seats, spots and fixtures strewn over the middle level, and seats in one row.</summary>
    public static TheoryData<int, int, bool> Crowds => new()
    {
        { 0, 0, false },
        { 40, 40, false },
        { 150, 60, false },
        { 400, 0, true },
        { 20, 400, false },
    };

    [Theory]
    [MemberData(nameof(Crowds))]
    public void No_label_covers_a_wall_a_mark_or_another_label(int seats, int fixtures, bool inARow)
    {
        House house = Crowded(seats, fixtures, inARow);
        for (int level = 0; level < house.Levels.Count; level++)
        {
            PlanView view = ViewOf(house);
            LevelLabels labels = PanelOf(house).LabelsOf(view, level, new NumberedKey());
            LabelBox[] written = [.. labels.Marks.Written, .. labels.Rooms.Taken, .. labels.Fixtures.Taken];
            LabelBox[] walls = [.. BuiltBoxes.OfWalls(view, house.Levels[level])];
            LabelBox[] marks = [.. MarksOn(house, level).Select(p => LabelBox.Around(view.PixelX(p.X), view.PixelY(p.Y), 4, 4))];
            Assert.All(written, label => Assert.DoesNotContain(walls, label.Overlaps));
            Assert.All(written, label => Assert.DoesNotContain(marks, label.Overlaps));
            Assert.All(written, label => Assert.Equal(1, written.Count(label.Overlaps)));
        }
    }

    [Fact]
    public void Every_name_stands_on_the_plan_or_in_the_key_or_is_counted()
    {
        House house = Crowded(150, 60, inARow: false);
        var key = new NumberedKey();
        LevelLabels labels = PanelOf(house).LabelsOf(ViewOf(house), 1, key);
        int names = MarksOn(house, 1).Count() + house.Fixtures.Count(f => f.LevelIndex == 1);
        Assert.Equal(names, labels.Marks.Written.Count() + labels.Fixtures.Taken.Count() + key.Unlabelled);
        Assert.InRange(key.Names.Count, 50, NumberedKey.MostNumbers);
        Assert.Contains(key.Names, n => n.StartsWith("seat ", StringComparison.Ordinal));
    }

    [Fact]
    public void No_more_numbers_are_given_than_anybody_looks_up()
    {
        var key = new NumberedKey();
        PlanPanel panel = PanelOf(Crowded(400, 600, inARow: false));
        PlanView view = ViewOf(Plain, points: 4000);
        LevelLabels labels = panel.LabelsOf(view, 1, key);
        Assert.InRange(key.Names.Count, 0, NumberedKey.MostNumbers);
        Assert.True(labels.Marks.Written.Any());
    }

    [Fact]
    public void A_crowded_plan_is_drawn_with_its_key_below()
    {
        PlanRequest bare = PlanRequest.OfLevel(Plain, 1, "Plan", ""), crowded = PlanRequest.OfLevel(Crowded(80, 80, false), 1, "Plan", "");
        PictureSize size = PlanPicture.FittingSize(crowded, 300, 1);
        Assert.True(size.HeightPixels > PlanPicture.FittingSize(bare, 300, 1).HeightPixels + 50);
        Assert.NotEmpty(PlanPicture.Render(crowded, size));
        Assert.NotEmpty(PlanPicture.Render(crowded, new PictureSize(300, 300, 1)));
    }

    [Fact]
    public void A_long_key_of_names_leaves_no_gap_under_the_plan()
    {
        PlanRequest request = PlanRequest.OfLevel(Crowded(20, 400, false), 1, "Plan", "");
        var picture = new Pixels(PlanPicture.Render(request, PlanPicture.FittingSize(request, 300, 2)));
        int gap = 0, widest = 0;
        for (int y = 0; y < picture.Height; y++)
        {
            gap = picture.Share(new(0, y, picture.Width, y + 1), Palette.Paper) == 1 ? gap + 1 : 0;
            widest = Math.Max(widest, gap);
        }

        // Two rows of the key are 30 points high, of 2 pixels each.
        Assert.InRange(widest, 1, 60);
    }

    [Fact]
    public void Many_levels_stand_in_rows()
    {
        House tower = Plain with { Levels = [.. Enumerable.Range(0, 50).Select(i => Plain.Levels[0] with { Name = $"level {i}" })] };
        PictureSize size = PlanPicture.FittingSize(PlanRequest.OfAllLevels(tower, "Plan", ""), pixelsPerPoint: 1);
        Assert.InRange((double)size.WidthPixels / size.HeightPixels, 0.8, 3);
    }

    // Twice the labels on the same ground must cost about four times the work at most, not fifty times.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Twice_the_labels_take_about_twice_the_looks(bool freeOnly)
    {
        double ratio = (double)LooksFor(400, freeOnly) / LooksFor(200, freeOnly);
        Assert.InRange(ratio, 1, 5);
    }

    private static long LooksFor(int count, bool freeOnly)
    {
        var random = new Random(7);
        LabelRequest[] requests =
        [
            .. Enumerable.Range(0, count).Select(_ => new LabelRequest(random.NextDouble() * 1200, random.NextDouble() * 900, 12, 120, 30)),
        ];
        var placer = new LabelPlacer(new(0, 0, 1200, 900), [], [.. requests.Select(r => r.Mark.Grown(8))], 4);
        _ = freeOnly ? placer.PlaceFree(requests).Count : placer.Place(requests).Count;
        return placer.Looks;
    }

    private static IEnumerable<Point2> MarksOn(House house, int level) =>
        house.Spots.Where(s => s.LevelIndex == level).Select(s => s.Plan)
            .Concat(house.Seats.Where(s => s.LevelIndex == level).Select(s => s.Plan));

    private static PlanPanel PanelOf(House house) => new(house, new MaterialPatterns(house), LengthUnit.Metre, []);

    private static PlanView ViewOf(House house, double points = 500) =>
        PlanPlot.ViewIn(new(30, 60, 30 + (points * 2), 60 + (points * 2)), PlanBounds.Of(house), 2);

    private static House Crowded(int seats, int fixtures, bool inARow)
    {
        var random = new Random(3);
        Seat seat = Plain.Seats[0];
        Fixture fixture = Plain.Fixtures[0];
        Polygon room = Plain.Levels[1].Rooms[0].Outline;
        Point2 Place(int i, int count) => inARow
            ? new(room.Least.X + (i * (room.Greatest.X - room.Least.X) / count), (room.Least.Y + room.Greatest.Y) / 2)
            : new(
                room.Least.X + (random.NextDouble() * (room.Greatest.X - room.Least.X)),
                room.Least.Y + (random.NextDouble() * (room.Greatest.Y - room.Least.Y)));
        return Plain with
        {
            Seats = [.. Plain.Seats, .. Enumerable.Range(0, seats).Select(i => seat with { Name = $"seat {i}", LevelIndex = 1, Plan = Place(i, seats) })],
            Fixtures =
            [
                .. Plain.Fixtures,
                .. Enumerable.Range(0, fixtures).Select(i => fixture with { Name = $"thing {i}", LevelIndex = 1, Centre = Place(i, fixtures), SizeX = 0.2, SizeY = 0.2 }),
            ],
        };
    }
}
