using LinkMargin.Engine.Houses;
using LinkMargin.Files.Plans;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tests.Plans;

public sealed class RoomWallsTests
{
    [Fact]
    public void One_room_has_its_four_walls_west_and_south_ends_first()
    {
        Plan plan = new PlanSketch().Room("den", 0, 0, 4, 3).BuildClean();
        Assert.Equal(
            [
                "den | outside: 0,0 to 0,3 block",
                "den | outside: 0,0 to 4,0 block",
                "den | outside: 0,3 to 4,3 block",
                "den | outside: 4,0 to 4,3 block",
            ],
            PlanSketch.Texts(plan));
        Assert.All(plan.Walls, w => Assert.Equal((0, PlanSketch.Height), (w.BaseMetres, w.TopMetres)));
        Room room = Assert.Single(plan.Rooms);
        Assert.Equal(("den", 12), (room.Name, room.Outline.AreaSquareMetres));
    }

    [Fact]
    public void A_shared_edge_is_one_inner_wall()
    {
        Plan plan = new PlanSketch().Room("den", 0, 0, 4, 3).Room("hall", 4, 0, 2, 3).BuildClean();
        Assert.Equal(7, plan.Walls.Count);
        Assert.Equal("den | hall: 4,0 to 4,3 stud", PlanSketch.Text(PlanSketch.WallNamed(plan, "den | hall")));
    }

    [Fact]
    public void Rooms_that_meet_at_different_corners_share_only_the_common_stretch()
    {
        // The hall reaches past the den to the north, and begins above it in the south.
        Plan plan = new PlanSketch().Room("den", 0, 0, 4, 3).Room("hall", 4, 1, 2, 4).BuildClean();
        Assert.Equal(
            [
                "den | outside: 0,0 to 0,3 block",
                "den | outside: 0,0 to 4,0 block",
                "den | outside: 0,3 to 4,3 block",
                "den | outside: 4,0 to 4,1 block",
                "den | hall: 4,1 to 4,3 stud",
                "hall | outside: 4,1 to 6,1 block",
                "hall | outside: 4,3 to 4,5 block",
                "hall | outside: 4,5 to 6,5 block",
                "hall | outside: 6,1 to 6,5 block",
            ],
            PlanSketch.Texts(plan));
    }

    [Fact]
    public void Two_rooms_along_one_edge_cut_it_at_their_common_corner()
    {
        Plan plan = new PlanSketch()
            .Room("hall", 0, 0, 6, 1.5).Room("left", 0, 1.5, 2.5, 3).Room("right", 2.5, 1.5, 3.5, 3).BuildClean();
        Assert.Equal("hall | left: 0,1.5 to 2.5,1.5 stud", PlanSketch.Text(PlanSketch.WallNamed(plan, "hall | left")));
        Assert.Equal("hall | right: 2.5,1.5 to 6,1.5 stud", PlanSketch.Text(PlanSketch.WallNamed(plan, "hall | right")));
        Assert.Equal("left | right: 2.5,1.5 to 2.5,4.5 stud", PlanSketch.Text(PlanSketch.WallNamed(plan, "left | right")));
        Assert.Equal(10, plan.Walls.Count);
    }

    [Fact]
    public void A_corner_that_a_straight_edge_merely_passes_does_not_cut_the_wall()
    {
        Plan plan = new PlanSketch()
            .Room("den", (0, 0), (2, 0), (4, 0), (4, 1), (4, 3), (0, 3)).Room("hall", 4, 0, 2, 3).BuildClean();
        Assert.Equal(7, plan.Walls.Count);
    }

    [Fact]
    public void An_outline_may_run_either_way_and_may_repeat_its_first_corner()
    {
        string[] anticlockwise = PlanSketch.Texts(new PlanSketch().Room("den", 0, 0, 4, 3).BuildClean());
        string[] clockwise = PlanSketch.Texts(
            new PlanSketch().Room("den", (4, 3), (4, 0), (0, 0), (0, 3), (4, 3)).BuildClean());
        Assert.Equal(anticlockwise, clockwise);
    }

    [Fact]
    public void Corners_within_a_millimetre_become_one()
    {
        Plan plan = new PlanSketch()
            .Room("den", 0, 0, 4, 3).Room("hall", (4.0009, 0.0004), (6, 0), (6, 3), (3.9995, 3)).BuildClean();
        Wall shared = PlanSketch.WallNamed(plan, "den | hall");
        Assert.Equal(7, plan.Walls.Count);
        Assert.Equal(2, plan.Walls.Count(w => w.Start == shared.Start) - 1 + plan.Walls.Count(w => w.End == shared.Start));
    }

    [Fact]
    public void Slanting_rooms_share_a_slanting_wall()
    {
        Plan plan = new PlanSketch()
            .Room("den", (0, 0), (4, 0), (5, 3), (0, 3)).Room("hall", (4, 0), (7, 0), (7, 3), (5, 3)).BuildClean();
        Assert.Equal("den | hall: 4,0 to 5,3 stud", PlanSketch.Text(PlanSketch.WallNamed(plan, "den | hall")));
        Assert.Equal(7, plan.Walls.Count);
    }

    [Fact]
    public void A_level_that_does_not_say_its_outer_walls_is_reported_to()
    {
        Problem problem = new PlanSketch { OuterMaterial = null }.Room("den", 0, 0, 4, 3).Only(Severity.Error);
        Assert.Contains("'outer: MATERIAL'", problem.Message, StringComparison.Ordinal);
        Assert.Equal(new Mark(1, 5), problem.Mark);
    }

    [Fact]
    public void A_level_that_does_not_say_its_inner_walls_is_reported_only_where_it_has_one()
    {
        new PlanSketch { InnerMaterial = null }.Room("den", 0, 0, 4, 3).BuildClean();
        Problem problem = new PlanSketch { InnerMaterial = null }
            .Room("den", 0, 0, 4, 3).Room("hall", 4, 0, 2, 3).Only(Severity.Error);
        Assert.Contains("'den | hall' is one; add 'inner: MATERIAL'", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Walls_written_all_round_make_the_materials_needless() =>
        new PlanSketch { InnerMaterial = null, OuterMaterial = null }
            .Room("den", 0, 0, 4, 3).Wall((0, 0), (4, 0), (4, 3), (0, 3), (0, 0)).BuildClean();

    [Fact]
    public void A_court_that_rooms_enclose_is_found_and_reported()
    {
        PlanSketch sketch = new PlanSketch()
            .Room("south", 0, 0, 6, 2).Room("west", 0, 2, 2, 2).Room("east", 4, 2, 2, 2).Room("north", 0, 4, 6, 2);
        Plan plan = sketch.Build();
        Assert.Contains("belongs to no room", Assert.Single(sketch.Problems).Message, StringComparison.Ordinal);
        Assert.Equal("room 1", plan.Rooms[^1].Name);
        Assert.Equal("stud", PlanSketch.WallNamed(plan, "west | room 1").Material.Name);
    }
}
