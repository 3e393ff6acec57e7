using LinkMargin.Engine.Houses;
using LinkMargin.Files.Plans;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tests.Plans;

public sealed class RoomsFoundTests
{
    [Fact]
    public void Walls_alone_make_rooms_from_west_to_east()
    {
        Plan plan = new PlanSketch()
            .Wall((0, 0), (6, 0), (6, 3), (0, 3), (0, 0)).Wall((4, 0), (4, 3)).BuildClean();
        Assert.Equal([("room 1", 12.0), ("room 2", 6.0)], plan.Rooms.Select(r => (r.Name, r.Outline.AreaSquareMetres)));
        Assert.Equal("room 1 | room 2: 4,0 to 4,3 brick", PlanSketch.Text(plan.Walls[^1]));
    }

    [Fact]
    public void A_door_may_join_two_found_rooms()
    {
        Plan plan = new PlanSketch()
            .Wall((0, 0), (6, 0), (6, 3), (0, 3), (0, 0)).Wall((4, 0), (4, 3)).Door("room 2", "room 1", 0.8).BuildClean();
        Assert.Equal(1.1, Assert.Single(plan.Walls[^1].Openings).OffsetMetres, 1e-9);
    }

    [Fact]
    public void Walls_beside_a_written_room_close_another()
    {
        Plan plan = new PlanSketch().Room("den", 0, 0, 4, 3).Wall((4, 0), (6, 0), (6, 3), (4, 3)).BuildClean();
        Assert.Equal(["den", "room 1"], plan.Rooms.Select(r => r.Name));
        Assert.Equal("stud", PlanSketch.WallNamed(plan, "den | room 1").Material.Name);
    }

    [Fact]
    public void A_found_room_takes_no_name_that_is_written()
    {
        Plan plan = new PlanSketch().Room("room 1", 0, 0, 4, 3).Wall((4, 0), (6, 0), (6, 3), (4, 3)).BuildClean();
        Assert.Equal(["room 1", "room 2"], plan.Rooms.Select(r => r.Name));
    }

    [Fact]
    public void A_wall_across_a_written_room_does_not_make_it_two() =>
        Assert.Single(new PlanSketch().Room("den", 0, 0, 4, 3).Wall((2, 0), (2, 3)).BuildClean().Rooms);

    [Theory]
    [InlineData(0.70, 0)]
    [InlineData(0.72, 1)]
    public void A_region_must_be_larger_than_half_a_square_metre(double side, int rooms)
    {
        Plan plan = new PlanSketch().Wall((0, 0), (side, 0), (side, side), (0, side), (0, 0)).Build();
        Assert.Equal(rooms, plan.Rooms.Count);
    }

    [Fact]
    public void A_half_height_wall_closes_no_room()
    {
        Plan plan = new PlanSketch()
            .Wall((0, 0), (6, 0), (6, 3), (0, 3), (0, 0)).Wall(null, 1.1, (4, 0), (4, 3)).BuildClean();
        Assert.Single(plan.Rooms);
    }

    [Fact]
    public void A_core_inside_a_hall_comes_before_it_and_shares_its_walls()
    {
        Plan plan = new PlanSketch()
            .Wall((0, 0), (6, 0), (6, 6), (0, 6), (0, 0)).Wall((2, 2), (4, 2), (4, 4), (2, 4), (2, 2))
            .Door("room 1", "room 2", 0.8).BuildClean();
        Assert.Equal([4.0, 36.0], plan.Rooms.Select(r => r.Outline.AreaSquareMetres));
        Assert.Equal(4, plan.Walls.Count(w => w.Name == "room 1 | room 2"));
        Assert.Single(plan.Walls.SelectMany(w => w.Openings));
    }

    [Fact]
    public void An_end_short_of_a_wall_is_reported_with_the_move_that_closes_the_room()
    {
        Problem problem = new PlanSketch()
            .Wall("shell", null, (0, 0), (6, 0), (6, 3), (0, 3), (0, 0)).Wall("party", null, (4, 0), (4, 2.96))
            .Only(Severity.Warning);
        Assert.Equal(
            "wall 'party' ends at (4, 2.96), 40 mm short of wall 'shell 3': the room stays open; move the end to (4, 3) to "
                + "close it",
            problem.Message);
        Assert.Equal(new Mark(2, 5), problem.Mark);
    }

    [Fact]
    public void A_gap_between_two_ends_is_reported_once()
    {
        Problem problem = new PlanSketch()
            .Wall((2, 0), (0, 0), (0, 3), (6, 3), (6, 0), (2.4, 0)).Only(Severity.Warning);
        Assert.Contains("ends at (2, 0), 400 mm short of", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.3, 1)]
    [InlineData(0.31, 0)]
    public void A_wing_wall_inside_a_room_is_no_fault_from_300_mm_on(double gap, int reported)
    {
        PlanSketch sketch = new PlanSketch().Room("den", 0, 0, 4, 3).Wall((2, 0), (2, 3 - gap));
        sketch.Build();
        Assert.Equal(reported, sketch.Problems.Count);
    }

    [Theory]
    [InlineData(0.6, 1)]
    [InlineData(0.61, 0)]
    public void Outside_every_room_a_gap_counts_up_to_600_mm(double gap, int reported)
    {
        PlanSketch sketch = new PlanSketch().Room("den", 0, 0, 4, 3).Wall((4, 0), (6, 0), (6, 3), (4 + gap, 3));
        sketch.Build();
        Assert.Equal(reported, sketch.Problems.Count);
    }

    [Fact]
    public void Where_no_room_closes_at_all_the_widest_gap_is_reported()
    {
        Problem problem = new PlanSketch().Wall((0, 0), (6, 0), (6, 3), (0, 3), (0, 1.5)).Only(Severity.Warning);
        Assert.Contains("1500 mm short of", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wall_that_runs_past_another_is_no_loose_end()
    {
        Plan plan = new PlanSketch()
            .Wall((-0.2, 0), (6, 0)).Wall((6, 0), (6, 3)).Wall((6, 3), (0, 3)).Wall((0, 3), (0, -0.2)).BuildClean();
        Assert.Single(plan.Rooms);
    }

    [Fact]
    public void Ends_within_5_mm_close_a_room()
    {
        Plan plan = new PlanSketch().Wall((0, 0), (6, 0), (6, 3), (0, 3), (0.003, 0.003)).BuildClean();
        Assert.Equal(18, Assert.Single(plan.Rooms).Outline.AreaSquareMetres, 0.1);
    }

    [Fact]
    public void Doors_count_as_closed()
    {
        Plan plan = new PlanSketch()
            .Wall("front", null, (0, 0), (6, 0)).Wall((6, 0), (6, 3), (0, 3), (0, 0))
            .Opening(new OpeningPlace.InWall("front"), 6, height: PlanSketch.Height, kind: OpeningKind.Gap).BuildClean();
        Assert.Single(plan.Rooms);
        Assert.Equal(6, plan.Walls[0].Openings[0].WidthMetres);
    }

    [Fact]
    public void A_free_standing_wall_is_no_fault() => new PlanSketch().Wall((0, 0), (3, 0)).BuildClean();

    [Fact]
    public void A_hundred_loose_ends_are_not_reported_one_by_one()
    {
        PlanSketch sketch = new PlanSketch().Room("den", 0, 0, 200, 3);
        for (int i = 1; i <= 100; i++)
        {
            sketch.Wall((i, 0), (i, 2.9));
        }

        sketch.Build();
        Assert.Equal(PlanLimits.MostOfAKind + 1, sketch.Problems.Count);
        Assert.Equal("there are more loose wall ends; fix the ones above first", sketch.Problems[^1].Message);
    }
}
