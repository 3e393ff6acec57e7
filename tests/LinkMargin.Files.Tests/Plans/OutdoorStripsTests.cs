using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Rooms;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Plans.Walls;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tests.Plans;

/// <summary>A strip of outdoors that a person cannot have meant.</summary>
public sealed class OutdoorStripsTests
{
    [Theory]
    [InlineData(PlanLimits.ThickestWallMetres - 0.001, false)] // one wall
    [InlineData(PlanLimits.ThickestWallMetres + 0.001, true)]
    [InlineData(PlanLimits.WidestStripMetres, true)]
    [InlineData(PlanLimits.WidestStripMetres + 0.001, false)]
    public void Two_rooms_apart_by_more_than_a_wall_and_less_than_a_passage_are_reported(double gap, bool isTold)
    {
        var sketch = new PlanSketch().Room("den", 0, 0, 4, 3).Room("hall", 4 + gap, 0, 2, 3);
        if (!isTold)
        {
            sketch.BuildClean();
            return;
        }

        Problem problem = sketch.Only(Severity.Warning);
        Assert.Equal("house.yaml", problem.File);
        Assert.Equal(FormattableString.Invariant(
            $"rooms 'den' and 'hall' are {gap} m apart with nothing between, so the strip is outdoors with an outer wall on either side; move or resize a room so that they share an edge, or write the strip as a room"),
            problem.Message);
    }

    [Theory]
    [InlineData(PlanLimits.NarrowestStripMetres + 0.001, true)]
    [InlineData(PlanLimits.NarrowestStripMetres - 0.001, false)]
    public void A_narrow_strip_is_reported_where_it_is_left_in_the_layout(double gap, bool isTold)
    {
        // As laid out, not as written: rooms so close are mostly joined before anybody looks for strips.
        var strips = new OutdoorStrips(Shapes(gap), [], [], Problems(out List<Problem> problems));
        strips.Report();
        Assert.Equal(isTold, problems.Count == 1);
    }

    [Theory]
    [InlineData(0.49, false)]
    [InlineData(0.51, true)]
    public void They_face_each_other_for_longer_than_the_strip_is_wide(double facing, bool isTold)
    {
        var sketch = new PlanSketch().Room("den", 0, 0, 4, 3).Room("hall", 4.5, 3 - facing, 2, 3);
        sketch.Build();
        Assert.Equal(isTold, sketch.Problems.Count == 1);
    }

    [Fact]
    public void A_room_or_a_wall_between_makes_it_no_strip_of_outdoors()
    {
        new PlanSketch().Room("den", 0, 0, 4, 3).Room("cupboard", 4, 0, 0.6, 3).Room("hall", 4.6, 0, 2, 3).BuildClean();
        var wall = new PlanSketch().Room("den", 0, 0, 4, 3).Room("hall", 4.6, 0, 2, 3).Wall((4.3, 0.5), (4.3, 2.5));
        wall.Build();
        Assert.DoesNotContain(wall.Problems, p => p.Message.Contains("outdoors", StringComparison.Ordinal));
        var closed = new PlanSketch().Room("den", 0, 0, 4, 3).Room("hall", 4.6, 0, 2, 3).Room("north", 0, 3, 6.6, 2).Room("south", 0, -2, 6.6, 2);
        Assert.Contains("that belongs to no room", closed.Only(Severity.Warning).Message, StringComparison.Ordinal); // enclosed: said once, otherwise
    }

    [Fact]
    public void Two_edges_of_one_room_are_a_niche_and_a_pair_of_rooms_is_reported_once()
    {
        new PlanSketch().Room("den", (0, 0), (5, 0), (5, 3), (3, 3), (3, 1), (2.4, 1), (2.4, 3), (0, 3)).BuildClean();
        var sketch = new PlanSketch().Room("den", (0, 0), (4, 0), (4, 3), (2, 3), (2, 5), (0, 5)).Room("hall", (4.5, 0), (7, 0), (7, 5), (2.5, 5), (2.5, 3.5), (4.5, 3.5));
        sketch.Only(Severity.Warning);
    }

    private static RoomShape[] Shapes(double gap) =>
    [
        Shape(0, "den", 0, 4),
        Shape(1, "hall", 4 + gap, 6 + gap),
    ];

    private static RoomShape Shape(int index, string name, double west, double east) =>
        new(index, name, default, RoomShape.EdgesOf(index, [new(west, 0), new(east, 0), new(east, 3), new(west, 3)]));

    private static PlanProblems Problems(out List<Problem> problems) =>
        new("house.yaml", problems = [], LinkMargin.Files.Quantities.LengthFormat.Metric);
}
