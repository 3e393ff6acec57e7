using System.Globalization;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Paths;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Paths;

/// <summary>The section through a spot and a seat: what it meets, where it is drawn, and what is written on it.</summary>
public class SectionTests
{
    private static readonly House House = SampleHouse.Make();
    private static readonly LinkModel Model = new(House);

    // Judged by asking the outline itself at points along the line.
    [Theory]
    [InlineData(0.31, 0.27, 9.7, 6.9)]
    [InlineData(9.1, 7.2, 0.4, 0.3)]
    [InlineData(5.03, 0.11, 5.03, 7.4)]
    public void The_stretches_inside_a_room_are_where_the_room_is(double x0, double y0, double x1, double y1)
    {
        var cut = new SectionCut(new(x0, y0), new(x1, y1));
        double length = new Point2(x0, y0).DistanceTo(new(x1, y1));
        int inside = 0;
        foreach (Room room in House.Levels.SelectMany(level => level.Rooms))
        {
            IReadOnlyList<(double From, double To)> stretches = cut.Inside(room.Outline);
            for (double at = -1; at < length + 1; at += 0.0137)
            {
                bool isIn = room.Outline.Contains(new Point2(x0, y0) + (at * cut.Along));
                inside += isIn ? 1 : 0;
                Assert.Equal(isIn, stretches.Any(s => at > s.From && at < s.To));
            }
        }

        Assert.True(inside > 100);
    }

    // Joists of the den run east, 0.4 m apart from the origin on; an eastward cut meets none, a northward one each, a slanted one fewer.
    [Theory]
    [InlineData(0, 1, 0.4)]
    [InlineData(3, 4, 0.5)]
    [InlineData(1, 0, null)]
    public void Joists_stand_where_the_cut_meets_them(double east, double north, double? apart)
    {
        var cut = new SectionCut(new(1, 0.1), new(1 + east, 0.1 + north));
        (double Middle, double Half)[] joists = [.. cut.Joists(House.Levels[0].Above!.Joists!, 0.045, 0, 4)];
        Assert.Equal(apart is null, joists.Length == 0);
        Assert.All(joists, joist =>
        {
            double y = 0.1 + (joist.Middle * cut.Along.Y);
            Assert.Equal(Math.Round(y / 0.4) * 0.4, y, 9);
            Assert.Equal(0.0225 / cut.Along.Y, joist.Half, 9);
        });
        Assert.All(joists.Zip(joists.Skip(1)), pair => Assert.Equal(apart!.Value, Math.Abs(pair.Second.Middle - pair.First.Middle), 9));
        Assert.InRange(joists.Length, apart is null ? 0 : (int)(4 / apart) - 1, apart is null ? 0 : (int)(4 / apart) + 1);
    }

    [Fact]
    public void A_wall_is_cut_at_its_openings()
    {
        // North along x = 5: the den's south wall stands full, the den door (from x = 4.6) is open to 2.0 m, the garden door shut.
        var cut = new SectionCut(new(5, 1), new(5, 4));
        WallInCut[] walls = [.. cut.Walls(House.Levels[0]).OrderBy(wall => wall.From)];
        Assert.Equal(["south", "den | passage", "north"], walls.Select(wall => wall.Wall.Name));
        Assert.Equal((-1.15, -0.85), (Math.Round(walls[0].From, 9), Math.Round(walls[0].To, 9)));
        Assert.Equal([(0, 2.5)], walls[0].Solid());
        Assert.Equal([(2.0, 2.5)], walls[1].Solid());
        Assert.True(walls[1].Opening!.IsOpen);
        Assert.Equal("garden door", walls[2].Opening!.Name);

        // A window leaves a sill and a lintel.
        WallInCut window = new SectionCut(new(2, 1), new(2, 4)).Walls(House.Levels[0]).MinBy(wall => wall.From)!;
        Assert.Equal([(0, 0.9), (2.1, 2.5)], window.Solid().Select(part => (part.From, Math.Round(part.To, 9))).Select(p => (Math.Round(p.From, 9), p.Item2)));
    }

    // Drawn without words, and looked at where things must be.
    [Fact]
    public void Floors_voids_walls_and_heights_are_drawn_where_they_are()
    {
        // North along x = 5, from the den to the living floor: under the hole of the stairs from y = 6.4 to 7.45.
        Spot spot = new("", 0, new(5, 1), 1.3);
        Seat seat = new("", 1, new(5, 7), 0.8, null, 15);
        House bare = House with { Fixtures = [], Levels = [.. House.Levels.Select(l => l with { Rooms = [.. l.Rooms.Select(r => r with { Name = "" })] })] };
        PathsRequest request = RequestFor(spot, seat) with { House = bare, Occupied = [] };
        request = request with { Paths = [request.Paths.First(entry => entry.Path.Path.Kind == Engine.Paths.PathKind.Direct)] };
        var panel = new SectionPanel(SectionRequest.Of(request));
        PlanBounds bounds = panel.Section.Bounds;
        const double Scale = 200;
        var view = new PlanView(new(40, 20, 40 + (Scale * bounds.WidthMetres), 20 + (Scale * bounds.HeightMetres)), bounds.Least, Scale, 1);
        using SKBitmap bitmap = new(1700, 1300);
        using (SKCanvas canvas = new(bitmap))
        {
            canvas.Clear(Palette.Paper);
            panel.Draw(canvas, view, PathsPicture.DrawnOn(panel.Section.Cut, request, view));
        }

        SKColor At(double y, double height) => bitmap.GetPixel((int)view.PixelX(y - 1), (int)view.PixelY(height));

        // Joists run east: one at y = 4.8, from 2.63 m down to 2.3625 m of a floor 0.2575 m thick stretched to 0.3 m.
        Assert.Equal(Palette.QuietInk, At(4.8, 2.5));
        Assert.Equal(Palette.Paper, At(4.6, 2.5));
        Assert.Equal(Palette.FaintInk, At(4.6, 2.638)); // the deck
        Assert.Equal(Palette.Paper, At(6.8, 2.638)); // the hole

        // The wall of the living floor at y = 5.2 stands on that floor, above its open door's head at 2.0 m none; the den's door is open.
        Assert.Equal(Palette.QuietInk, At(5.2, 2.65 + 1.0));
        Assert.Equal(Palette.Paper, At(5.2, 1.0));
        Assert.Equal(Palette.QuietInk, At(5.2, 2.2));

        // Spot and seat at their heights above the lowest floor.
        Assert.Equal(Palette.Spot, At(1, 1.3));
        Assert.Equal(Palette.Ink, At(7, 2.65 + 0.8));
        Assert.True(PathIsNear(2.5) && PathIsNear(6));

        bool PathIsNear(double y) => Enumerable.Range(-6, 13).Any(d => IsPath(bitmap.GetPixel(
            (int)view.PixelX(y - 1), (int)view.PixelY(1.3 + ((2.65 + 0.8 - 1.3) * (y - 1) / 6)) + d)));
        static bool IsPath(SKColor c) => c.Red > c.Green + 60 && c.Red > c.Blue + 40;
    }

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
    public void No_label_of_a_section_covers_a_mark_or_another_label_and_every_path_is_on_it(int spot, int seat)
    {
        PathsRequest request = RequestFor(House.Spots[spot], House.Seats[seat]);
        var panel = new SectionPanel(SectionRequest.Of(request));
        PlanBounds bounds = panel.Section.Bounds;
        PlanView view = PlanPlot.ViewIn(new(0, 0, 1100, 1100), bounds, 2);
        SectionLabels labels = panel.LabelsOf(view, PathsPicture.DrawnOn(panel.Section.Cut, request, view));
        LabelBox[] written = [.. labels.Marks.Written, .. labels.Rooms.Taken, .. labels.Fixtures.Taken, .. labels.Numbers.Taken];
        LabelBox[] marks = [.. new[] { panel.Section.From, panel.Section.To }.Select(at => LabelBox.Around(view.PixelX(at.X), view.PixelY(at.Y), 6, 6))];
        LabelBox[] names = [.. labels.Marks.Written];

        Assert.Equal(2, names.Length);
        Assert.All(written, label => Assert.Equal(1, written.Count(label.Overlaps)));
        Assert.All(written, label => Assert.DoesNotContain(marks, label.Overlaps));
        Assert.All(request.Paths.Where(e => e.Path.Path.Points.Count > 1).SelectMany(e => e.Path.Path.Points), point =>
        {
            Point2 seen = panel.Section.Cut.Seen(point);
            Assert.InRange(seen.X, bounds.Least.X, bounds.Greatest.X);
            Assert.InRange(seen.Y, bounds.Least.Y, bounds.Greatest.Y);
        });
    }

    [Fact]
    public void A_seat_right_above_the_spot_has_a_section_too()
    {
        PathsRequest request = RequestFor(House.Spots[0], new Seat("over", 1, House.Spots[0].Plan, 0.7, null, 15));
        PictureSize size = PathsPicture.FittingSize(request, pixelsPerPoint: 1);
        Assert.NotEmpty(PathsPicture.Render(request, size));
        Assert.Equal(new Point2(1, 0), new SectionPanel(SectionRequest.Of(request)).Section.Cut.Along);
    }

    private static PathsRequest RequestFor(Spot spot, Seat seat)
    {
        LinkBudget budget = LinkEvaluation.Budget(Model, spot, seat);
        return new PathsRequest(
            House,
            spot,
            seat,
            [.. budget.Paths.Select((path, i) => new PathEntry(
                i + 1, path, budget.ShareOf(path), $"path {i}", "1.00 m", path.LossDb.ToString("0.0", CultureInfo.InvariantCulture), "1.0 %"))],
            "60.0",
            "Paths",
            "A test of drawing.");
    }
}
