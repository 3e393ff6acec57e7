using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Plans;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tests.Plans;

/// <summary>People measure clear rooms and leave the walls' thicknesses between them.</summary>
public sealed class RoomsALittleApartTests
{
    [Fact]
    public void Two_faces_become_one_wall_midway()
    {
        Plan plan = new PlanSketch().Room("den", 0, 0, 4, 3).Room("hall", 4.1, 0, 2, 3).BuildClean();
        Assert.Equal(
            [
                "den | outside: 0,0 to 0,3 block",
                "den | outside: 0,0 to 4.05,0 block",
                "den | outside: 0,3 to 4.05,3 block",
                "den | hall: 4.05,0 to 4.05,3 stud",
                "hall | outside: 4.05,0 to 6.1,0 block",
                "hall | outside: 4.05,3 to 6.1,3 block",
                "hall | outside: 6.1,0 to 6.1,3 block",
            ],
            PlanSketch.Texts(plan));
    }

    [Fact]
    public void Four_clear_rooms_meet_at_one_point()
    {
        Plan plan = new PlanSketch()
            .Room("a", 0, 0, 4, 3).Room("b", 4.1, 0, 4, 3).Room("c", 0, 3.12, 4, 3).Room("d", 4.1, 3.12, 4, 3).BuildClean();
        Assert.Equal(12, plan.Walls.Count);
        Assert.Equal("a | c: 0,3.06 to 4.05,3.06 stud", PlanSketch.Text(PlanSketch.WallNamed(plan, "a | c")));
        Assert.Equal("b | d: 4.05,3.06 to 8.1,3.06 stud", PlanSketch.Text(PlanSketch.WallNamed(plan, "b | d")));
        Point2 middle = PlanSketch.WallNamed(plan, "a | b").End;
        Assert.Equal(middle, PlanSketch.WallNamed(plan, "c | d").Start);
        Assert.Equal(middle, PlanSketch.WallNamed(plan, "a | c").End);
        Assert.Equal(middle, PlanSketch.WallNamed(plan, "b | d").Start);
    }

    [Fact]
    public void A_long_room_beside_two_stays_straight()
    {
        Plan plan = new PlanSketch()
            .Room("hall", 0, 0, 1.2, 6.1).Room("a", 1.3, 0, 3, 3).Room("b", 1.32, 3.1, 2.98, 3).BuildClean();
        Wall withA = PlanSketch.WallNamed(plan, "hall | a"), withB = PlanSketch.WallNamed(plan, "hall | b");
        Assert.Equal(withA.End, withB.Start);
        Assert.Equal(withA.Start.X, withB.End.X, 1e-9);
        Assert.Equal(3.05, withA.End.Y, 1e-9);
        Assert.Equal(10, plan.Walls.Count);
    }

    [Fact]
    public void A_line_of_outer_wall_stays_straight_past_the_room_beside_it()
    {
        // Only 'a' has a neighbour to the east; 'b' goes along with it.
        Plan plan = new PlanSketch().Room("a", 0, 0, 4, 3).Room("b", 0, 3, 4, 3).Room("c", 4.2, 0, 2, 3).BuildClean();
        Assert.Contains("a | c: 4.1,0 to 4.1,3 stud", PlanSketch.Texts(plan));
        Assert.Contains("b | outside: 4.1,3 to 4.1,6 block", PlanSketch.Texts(plan));
        Assert.Equal(10, plan.Walls.Count);
    }

    [Theory]
    [InlineData(0.35, 7)]
    [InlineData(0.352, 8)]
    public void The_thickest_wall_is_350_mm(double gap, int walls) =>
        Assert.Equal(walls, new PlanSketch().Room("a", 0, 0, 4, 3).Room("b", 4 + gap, 0, 2, 3).Build().Walls.Count);

    [Theory]
    [InlineData(0.4, 7)]
    [InlineData(0.6, 8)]
    public void Faces_run_parallel_within_half_a_degree(double degrees, int walls)
    {
        double lean = 3 * Math.Tan(degrees * Math.PI / 180);
        Plan plan = new PlanSketch()
            .Room("a", 0, 0, 4, 3).Room("b", (4.1, 0), (7, 0), (7, 3), (4.1 + lean, 3)).BuildClean();
        Assert.Equal(walls, plan.Walls.Count);
    }

    [Fact]
    public void A_narrow_room_between_two_keeps_them_apart()
    {
        Plan plan = new PlanSketch()
            .Room("den", 0, 0, 4, 3).Room("duct", 4, 0, 0.3, 3).Room("hall", 4.3, 0, 2, 3).BuildClean();
        Assert.Equal(10, plan.Walls.Count);
        Assert.Equal(0.9, plan.Rooms[1].Outline.AreaSquareMetres, 1e-9);
    }

    [Fact]
    public void A_room_partly_between_two_leaves_two_walls_and_says_so()
    {
        PlanSketch sketch = new PlanSketch()
            .Room("den", 0, 0, 4, 3).Room("duct", 4, 0, 0.3, 1).Room("hall", 4.3, 0, 2, 3);
        Problem problem = sketch.Only(Severity.Warning);
        Assert.Equal(
            "rooms 'den' and 'hall' are 0.3 m apart with 'duct' partly between them, which makes two walls; make them share "
                + "an edge for a single wall",
            problem.Message);
    }

    [Fact]
    public void Gaps_that_differ_along_one_line_are_reported()
    {
        PlanSketch sketch = new PlanSketch().Room("hall", 0, 0, 1.2, 6).Room("a", 1.3, 0, 3, 3).Room("b", 1.5, 3, 3, 3);
        Plan plan = sketch.Build();
        Assert.Equal(
            "'hall' and 'b' are 0.3 m apart, but 'hall' and 'a', along the same line, 0.1 m; one "
                + "straight wall was placed midway, so check these rooms' sizes",
            Assert.Single(sketch.Problems).Message);
        Assert.Equal("hall | b: 1.35,3 to 1.35,6 stud", PlanSketch.Text(PlanSketch.WallNamed(plan, "hall | b")));
    }

    [Fact]
    public void A_wall_written_between_the_faces_says_where_the_wall_is()
    {
        Plan plan = new PlanSketch()
            .Room("den", 0, 0, 4, 3).Room("hall", 4.1, 0, 2, 3).Wall((4.03, 0), (4.03, 3)).BuildClean();
        Assert.Equal("den | hall: 4.03,0 to 4.03,3 brick", PlanSketch.Text(PlanSketch.WallNamed(plan, "den | hall")));
        Assert.Equal(7, plan.Walls.Count);
    }

    [Fact]
    public void A_door_is_placed_from_the_corner_a_person_measures_from()
    {
        // The passage's clear corner stands at x = 4.1, though its walls now meet at x = 4.05.
        Plan plan = new PlanSketch()
            .Room("a", 0, 0, 4, 3).Room("b", 4.1, 0, 4, 3).Room("c", 0, 3.1, 4, 3).Room("d", 4.1, 3.1, 4, 3)
            .Door("b", "d", 0.8, at: 0.5).Window("b", PlanSide.South, 1, at: 0.25).BuildClean();
        Wall inner = PlanSketch.WallNamed(plan, "b | d");
        Assert.Equal(4.6, inner.Start.X + Assert.Single(inner.Openings).OffsetMetres, 1e-9);
        Wall south = Assert.Single(plan.Walls, w => w.Name == "b | outside" && w.End.Y == 0 && w.Openings.Count > 0);
        Assert.Equal(4.35, south.Start.X + south.Openings[0].OffsetMetres, 1e-9);
    }

    [Theory]
    [InlineData(0.05, 7)]
    [InlineData(0.052, 8)]
    public void Beside_clear_rooms_walls_up_to_50_mm_out_of_line_are_straight(double outOfLine, int walls)
    {
        // Past the limit the west room's corner leaves a short stretch of outer wall.
        Plan plan = new PlanSketch().Room("a", 0, 0, 4, 3).Room("b", 4.1, outOfLine, 2, 3 - outOfLine).BuildClean();
        Assert.Equal(walls, plan.Walls.Count);
    }

    [Fact]
    public void A_nib_in_a_clear_room_does_not_keep_it_apart_from_its_neighbour()
    {
        Plan plan = new PlanSketch()
            .Room("a", (0, 0), (4, 0), (4, 1), (4.02, 1), (4.02, 3), (0, 3)).Room("b", 4.12, 0, 2, 3).BuildClean();
        Assert.Equal(3, plan.Walls.Where(w => w.Name == "a | b").Sum(w => w.LengthMetres), 1e-9);
    }

    [Fact]
    public void Rooms_that_share_their_edges_keep_a_step_of_20_mm()
    {
        Plan plan = new PlanSketch().Room("a", 0, 0, 4, 3).Room("b", 4, 0.02, 2, 2.98).BuildClean();
        Assert.Contains("a | outside: 4,0 to 4,0.02 block", PlanSketch.Texts(plan));
    }

    [Fact]
    public void Rooms_that_face_along_less_than_their_gap_are_not_neighbours()
    {
        Plan plan = new PlanSketch().Room("a", 0, 0, 4, 3).Room("b", 4.3, 2.8, 2, 3).BuildClean();
        Assert.Equal(8, plan.Walls.Count);
    }
}
