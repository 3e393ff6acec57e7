using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Plans;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tests.Plans;

public sealed class WrittenWallsTests
{
    [Fact]
    public void A_wall_along_an_edge_replaces_that_stretch()
    {
        Plan plan = new PlanSketch().Room("den", 0, 0, 4, 3).Room("hall", 4, 0, 2, 3).Wall((4, 1), (4, 2)).BuildClean();
        string[] shared = [.. PlanSketch.Texts(plan).Where(t => t.StartsWith("den | hall", StringComparison.Ordinal))];
        Assert.Equal(
            ["den | hall: 4,0 to 4,1 stud", "den | hall: 4,2 to 4,3 stud", "den | hall: 4,1 to 4,2 brick"], shared);
    }

    [Fact]
    public void A_half_height_wall_along_an_edge_replaces_it_too()
    {
        Plan plan = new PlanSketch()
            .Room("den", 0, 0, 4, 3).Room("hall", 4, 0, 2, 3).Wall(null, 1.1, (4, 0), (4, 3)).BuildClean();
        Assert.Equal("den | hall: 4,0 to 4,3 brick up to 1.1", PlanSketch.Text(PlanSketch.WallNamed(plan, "den | hall")));
        Assert.Equal(2, plan.Rooms.Count);
    }

    [Theory]
    [InlineData(0.005, 7)]
    [InlineData(0.006, 8)]
    public void A_wall_lies_along_an_edge_within_5_mm(double beside, int walls)
    {
        Plan plan = new PlanSketch()
            .Room("den", 0, 0, 4, 3).Room("hall", 4, 0, 2, 3).Wall((4 + beside, 0), (4 + beside, 3)).Build();
        Assert.Equal(walls, plan.Walls.Count);
    }

    [Theory]
    [InlineData(0.006, 1)]
    [InlineData(0.15, 1)]
    [InlineData(0.152, 0)]
    public void A_wall_close_beside_a_rooms_wall_is_reported(double beside, int reported)
    {
        PlanSketch sketch = new PlanSketch()
            .Room("den", 0, 0, 4, 3).Room("hall", 4, 0, 2, 3).Wall("party", null, (4 + beside, 0), (4 + beside, 3));
        sketch.Build();
        Assert.Equal(reported, sketch.Problems.Count);
        Assert.All(sketch.Problems, p => Assert.EndsWith(
            "from the room wall between (4, 0) and (4, 3), so both count; to replace the room wall, draw this one exactly along it",
            p.Message,
            StringComparison.Ordinal));
    }

    [Fact]
    public void A_wall_within_5_mm_moves_onto_the_corners_so_that_no_slit_remains()
    {
        Plan plan = new PlanSketch()
            .Room("den", 0, 0, 4, 3).Room("hall", 4, 0, 2, 3).Wall((4.004, 0.003), (4.004, 2.997)).BuildClean();
        Wall wall = PlanSketch.WallNamed(plan, "den | hall");
        Assert.Equal((new Point2(4, 0), new Point2(4, 3)), (wall.Start, wall.End));
        Assert.Equal("brick", wall.Material.Name);
    }

    [Fact]
    public void A_wall_along_several_rooms_edges_replaces_them_all()
    {
        Plan plan = new PlanSketch()
            .Room("a", 0, 0, 2, 3).Room("b", 2, 0, 2, 3).Wall("front", null, (0, 0), (4, 0)).BuildClean();
        Assert.Equal(6, plan.Walls.Count);
        Assert.Equal("front: 0,0 to 4,0 brick", PlanSketch.Text(plan.Walls[^1]));
    }

    [Fact]
    public void Stretches_of_a_named_polyline_are_numbered_and_of_an_unnamed_one_by_material()
    {
        Plan plan = new PlanSketch()
            .Room("den", 0, 0, 6, 6)
            .Wall("screen", 1.2, (1, 1), (2, 1), (2, 2)).Wall(null, 1.2, (4, 4), (5, 4), (5, 5)).BuildClean();
        Assert.Equal(
            ["screen 1", "screen 2", "brick wall 1", "brick wall 2"], plan.Walls.Skip(4).Select(w => w.Name));
    }

    [Fact]
    public void Walls_run_from_their_west_end_or_from_the_south_when_they_run_more_north()
    {
        Plan plan = new PlanSketch()
            .Room("den", 0, 0, 9, 9)
            .Wall(null, 1, (5, 1), (2, 2)).Wall(null, 1, (7, 8), (6, 3)).Wall(null, 1, (2, 5), (3, 8)).BuildClean();
        Assert.Equal(
            [new Point2(2, 2), new Point2(6, 3), new Point2(2, 5)], plan.Walls.Skip(4).Select(w => w.Start));
    }

    [Fact]
    public void Two_part_height_walls_may_stand_one_above_the_other()
    {
        Plan plan = new PlanSketch()
            .Room("den", 0, 0, 4, 3).Room("hall", 4, 0, 2, 3)
            .Wall(new WallDraft(null, [new(4, 0), new(4, 3)], PlanSketch.Brick, 0, 1, default))
            .Wall(new WallDraft(null, [new(4, 0), new(4, 3)], PlanSketch.Inner, 2, null, default)).BuildClean();
        Assert.Equal(
            [(0, 1), (2, 2.4)], plan.Walls.Where(w => w.Name == "den | hall").Select(w => (w.BaseMetres, w.TopMetres)));
    }

    [Fact]
    public void A_wall_that_nearly_reaches_an_edge_is_drawn_to_it()
    {
        Plan plan = new PlanSketch().Room("den", 0, 0, 4, 3).Wall((2, 0.004), (2, 1)).BuildClean();
        Assert.Equal(new Point2(2, 0), plan.Walls[^1].Start);
    }

    [Fact]
    public void A_repeated_point_is_a_mistake_with_its_place()
    {
        Problem problem = new PlanSketch().Wall((0, 0), (4, 0), (4, 0), (4, 3)).Only(Severity.Error);
        Assert.Equal(
            "this brick wall has no length between its points 2 and 3, both at (4, 0); remove one or move it", problem.Message);
    }

    [Fact]
    public void A_wall_of_one_point_is_a_mistake()
    {
        Problem problem = new PlanSketch().Wall("stub", null, (1, 1)).Only(Severity.Error);
        Assert.Equal("wall 'stub' has only one point; a wall runs along at least 2", problem.Message);
    }

    [Theory]
    [InlineData(0, 2.4, true)]
    [InlineData(0, 2.401, false)]
    [InlineData(-0.001, 1, false)]
    [InlineData(1, 1, false)]
    [InlineData(1, 1.01, true)]
    public void A_wall_stays_within_the_level_and_has_a_height(double bottom, double top, bool isRight)
    {
        PlanSketch sketch = new PlanSketch()
            .Room("den", 0, 0, 4, 3).Wall(new WallDraft("w", [new(1, 1), new(2, 1)], PlanSketch.Brick, bottom, top, default));
        sketch.Build();
        Assert.Equal(isRight, sketch.Problems.Count == 0);
    }

    [Fact]
    public void A_wall_written_twice_is_a_mistake()
    {
        Problem problem = new PlanSketch()
            .Room("den", 0, 0, 4, 3).Wall("a", 1.2, (1, 1), (3, 1)).Wall("b", 1.2, (3, 1), (1, 1)).Only(Severity.Error);
        Assert.Equal(new Mark(3, 5), problem.Mark);
        Assert.Contains("wall 'b' is written twice", problem.Message, StringComparison.Ordinal);
    }
}
