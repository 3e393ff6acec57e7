using LinkMargin.Engine.Houses;
using LinkMargin.Files.Plans;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Tests.Plans;

public sealed class OpeningsTests
{
    private static PlanSketch TwoRooms => new PlanSketch().Room("den", 0, 0, 4, 3).Room("hall", 4, 0, 2, 3);

    [Fact]
    public void A_door_between_two_rooms_is_centred_in_the_wall_they_share()
    {
        Plan plan = TwoRooms.Door("hall", "den", 0.8, name: "den door").BuildClean();
        Opening door = Assert.Single(PlanSketch.WallNamed(plan, "den | hall").Openings);
        Assert.Equal(("den door", OpeningKind.Door, 0.8), (door.Name, door.Kind, door.WidthMetres));
        Assert.Equal(1.1, door.OffsetMetres, 1e-9);
    }

    [Fact]
    public void At_counts_from_the_south_end_of_a_wall_that_runs_north()
    {
        Plan plan = TwoRooms.Door("den", "hall", 0.8, at: 0.3).BuildClean();
        Assert.Equal(0.3, Assert.Single(PlanSketch.WallNamed(plan, "den | hall").Openings).OffsetMetres, 1e-9);
    }

    [Fact]
    public void An_opening_without_a_name_is_called_by_its_place()
    {
        Plan plan = TwoRooms.Door("den", "hall", 0.8).Window("den", PlanSide.South, 1)
            .Opening(new OpeningPlace.InWall("hall | outside"), 0.5, kind: OpeningKind.Gap).BuildClean();
        Assert.Equal(
            ["door den | hall", "gap in hall | outside", "window south of den"],
            plan.Walls.SelectMany(w => w.Openings).Select(o => o.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Outside_means_the_longest_outer_wall()
    {
        Plan plan = TwoRooms.Door("den", "outside", 0.9, at: 0.2).BuildClean();
        Wall wall = Assert.Single(plan.Walls, w => w.Openings.Count > 0);
        Assert.Equal("den | outside: 0,0 to 4,0 block", PlanSketch.Text(wall));
    }

    [Theory]
    [InlineData(PlanSide.South, "den | outside: 0,0 to 4,0 block")]
    [InlineData(PlanSide.North, "den | outside: 0,3 to 4,3 block")]
    [InlineData(PlanSide.West, "den | outside: 0,0 to 0,3 block")]
    [InlineData(PlanSide.East, "den | hall: 4,0 to 4,3 stud")]
    internal void A_side_of_a_room_is_the_wall_that_looks_that_way(PlanSide side, string wall)
    {
        Plan plan = TwoRooms.Window("den", side, 1).BuildClean();
        Assert.Equal(wall, PlanSketch.Text(Assert.Single(plan.Walls, w => w.Openings.Count > 0)));
    }

    [Fact]
    public void At_on_a_side_counts_along_all_its_walls()
    {
        // North of the hall stand two rooms: 2.5 m and 3.5 m of its north side.
        Plan plan = new PlanSketch()
            .Room("hall", 0, 0, 6, 1.5).Room("left", 0, 1.5, 2.5, 3).Room("right", 2.5, 1.5, 3.5, 3)
            .Window("hall", PlanSide.North, 0.8, at: 3).BuildClean();
        Assert.Equal(0.5, Assert.Single(PlanSketch.WallNamed(plan, "hall | right").Openings).OffsetMetres, 1e-9);
    }

    [Fact]
    public void On_a_side_with_several_walls_a_window_goes_to_the_longest()
    {
        Plan plan = new PlanSketch()
            .Room("hall", 0, 0, 6, 1.5).Room("left", 0, 1.5, 2.5, 3).Room("right", 2.5, 1.5, 3.5, 3)
            .Window("hall", PlanSide.North, 0.8).BuildClean();
        Assert.Equal(1.35, Assert.Single(PlanSketch.WallNamed(plan, "hall | right").Openings).OffsetMetres, 1e-9);
    }

    [Fact]
    public void An_opening_across_two_walls_of_a_side_is_reported_where_it_may_stand()
    {
        Problem problem = new PlanSketch()
            .Room("hall", 0, 0, 6, 1.5).Room("left", 0, 1.5, 2.5, 3).Room("right", 2.5, 1.5, 3.5, 3)
            .Window("hall", PlanSide.North, 0.8, at: 2, name: "slot").Only(Severity.Error);
        Assert.Equal(
            "window 'slot' at 2 m, 0.8 m wide, does not lie within a single wall of that side; 'at' may be 0 to 1.7 m, or 2.5 "
                + "to 5.2 m",
            problem.Message);
    }

    [Fact]
    public void A_stepped_side_is_laid_end_to_end_from_the_west()
    {
        Plan plan = new PlanSketch()
            .Room("den", (0, 0), (3, 0), (3, 1), (5, 1), (5, 4), (0, 4)).Window("den", PlanSide.South, 1, at: 3.5).BuildClean();
        Wall wall = Assert.Single(plan.Walls, w => w.Openings.Count > 0);
        Assert.Equal("den | outside: 3,1 to 5,1 block", PlanSketch.Text(wall));
        Assert.Equal(0.5, wall.Openings[0].OffsetMetres, 1e-9);
    }

    [Theory]
    [InlineData(44, true)]
    [InlineData(46, false)]
    public void A_wall_looks_south_within_45_degrees(double degrees, bool isFound)
    {
        double rise = 4 * Math.Tan(degrees * Math.PI / 180);
        PlanSketch sketch = new PlanSketch().Room("den", (0, 0), (4, rise), (0, 9)).Window("den", PlanSide.South, 1);
        sketch.Build();
        Assert.Equal(isFound, sketch.Problems.Count == 0);
    }

    [Fact]
    public void Two_doors_without_a_place_are_spread_evenly()
    {
        Plan plan = TwoRooms.Door("den", "hall", 0.8, name: "first").Door("den", "hall", 0.7, name: "second").BuildClean();
        Assert.Equal(
            [("first", 0.5), ("second", 1.8)],
            PlanSketch.WallNamed(plan, "den | hall").Openings.Select(o => (o.Name, Math.Round(o.OffsetMetres, 9))));
    }

    [Fact]
    public void A_light_above_a_door_does_not_push_it_aside()
    {
        Plan plan = TwoRooms.Door("den", "hall", 0.8)
            .Opening(new OpeningPlace.Between("den", "hall"), 0.6, sill: 2.05, height: 0.3).BuildClean();
        Assert.Equal(
            [1.1, 1.2], PlanSketch.WallNamed(plan, "den | hall").Openings.Select(o => Math.Round(o.OffsetMetres, 9)));
    }

    [Fact]
    public void Openings_that_overlap_are_a_mistake_at_the_later_one()
    {
        Problem problem = TwoRooms.Door("den", "hall", 0.8, at: 1, name: "b").Door("den", "hall", 0.8, at: 0.3, name: "a")
            .Only(Severity.Error);
        Assert.Equal(new Mark(4, 5), problem.Mark);
        Assert.Equal(
            "door 'a' and door 'b' overlap in the wall 'den | hall': they take up 0.3 to 1.1 m and 1 to 1.8 m of it; move one "
                + "with 'at' or make one narrower",
            problem.Message);
    }

    [Theory]
    [InlineData(1.1, true)]
    [InlineData(1.099, false)]
    public void Openings_may_touch_but_not_overlap(double at, bool isRight)
    {
        PlanSketch sketch = TwoRooms.Door("den", "hall", 0.8, at: 0.3).Door("den", "hall", 0.8, at: at);
        sketch.Build();
        Assert.Equal(isRight, sketch.Problems.Count == 0);
    }

    [Theory]
    [InlineData(3, true)]
    [InlineData(3.001, false)]
    public void An_opening_may_be_as_wide_as_its_wall(double width, bool isRight)
    {
        PlanSketch sketch = TwoRooms.Door("den", "hall", width, name: "door");
        sketch.Build();
        Assert.Equal(
            isRight ? "" : "door 'door' is 3.001 m wide, but the wall 'den | hall' has only 3 m there; make it at most 3 m wide",
            string.Concat(sketch.Problems.Select(p => p.Message)));
    }

    [Theory]
    [InlineData(2.4, true)]
    [InlineData(2.401, false)]
    public void An_opening_may_be_as_high_as_its_wall(double height, bool isRight)
    {
        PlanSketch sketch = TwoRooms.Door("den", "hall", 0.8, height: height, name: "door");
        sketch.Build();
        Assert.Equal(
            isRight
                ? ""
                : "door 'door' reaches from 0 m to 2.401 m above the floor, but its wall 'den | hall' from 0 m to 2.4 m; keep it "
                    + "within that",
            string.Concat(sketch.Problems.Select(p => p.Message)));
    }

    [Theory]
    [InlineData(2.2, true)]
    [InlineData(2.201, false)]
    [InlineData(0, true)]
    [InlineData(-0.001, false)]
    public void An_opening_stays_within_its_wall(double at, bool isRight)
    {
        PlanSketch sketch = TwoRooms.Door("den", "hall", 0.8, at: at);
        sketch.Build();
        Assert.Equal(isRight, sketch.Problems.Count == 0);
        Assert.All(sketch.Problems, p => Assert.EndsWith("'at' may be 0 to 2.2 m", p.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void A_low_wall_takes_no_high_door_and_a_higher_one_is_preferred()
    {
        Plan plan = TwoRooms.Wall(null, 1, (4, 0), (4, 2)).Door("den", "hall", 0.8).BuildClean();
        Wall wall = Assert.Single(plan.Walls, w => w.Openings.Count > 0);
        Assert.Equal("den | hall: 4,2 to 4,3 stud", PlanSketch.Text(wall));
        Problem problem = TwoRooms.Wall("low", 1, (4, 0), (4, 3)).Door("den", "hall", 0.8).Only(Severity.Error);
        Assert.Contains("its wall 'low' from 0 m to 1 m", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void More_openings_than_a_wall_has_room_for_are_a_mistake()
    {
        Problem problem = TwoRooms.Door("den", "hall", 1.6).Door("den", "hall", 1.6, name: "extra").Only(Severity.Error);
        Assert.Equal(
            "door 'extra' is one of 2 openings that are together 3.2 m wide, but the wall 'den | hall' has only 3 m for them; make them narrower or "
                + "remove one",
            problem.Message);
    }

    [Fact]
    public void A_wrong_room_is_answered_with_the_nearest_word()
    {
        Problem problem = TwoRooms.Door("den", "hell", 0.8).Only(Severity.Error);
        Assert.Equal("'door den | hell': this level has no room 'hell'; did you mean 'hall'?", problem.Message);
    }

    [Fact]
    public void A_wrong_wall_is_answered_with_the_nearest_word()
    {
        Problem problem = TwoRooms.Opening(new OpeningPlace.InWall("den / hall"), 0.8).Only(Severity.Error);
        Assert.Contains("did you mean 'den | hall'?", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Rooms_that_do_not_touch_are_reported_with_those_that_do()
    {
        Problem problem = TwoRooms.Room("store", 6, 0, 2, 3).Door("store", "den", 0.8).Only(Severity.Error);
        Assert.Equal(
            "'door store | den': 'store' and 'den' share no wall on this level; 'store' touches 'outside' and 'hall'; name "
                + "two rooms that touch",
            problem.Message);
    }

    [Fact]
    public void A_door_from_a_room_to_itself_is_a_mistake() =>
        Assert.Contains("itself", TwoRooms.Door("den", "den", 0.8).Only(Severity.Error).Message, StringComparison.Ordinal);

    [Fact]
    public void Outside_has_no_sides() =>
        Assert.Contains(
            "'outside'", TwoRooms.Window("outside", PlanSide.South, 1).Only(Severity.Error).Message, StringComparison.Ordinal);

    [Fact]
    public void An_opening_in_a_room_that_is_itself_wrong_is_not_reported_again()
    {
        PlanSketch sketch = new PlanSketch().Room("den", 0, 0, 4, 3).Room("bad", (4, 0), (5, 0)).Door("den", "bad", 0.8);
        Assert.Contains("different corners", sketch.Only(Severity.Error).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_named_polyline_takes_an_opening_in_its_longest_stretch()
    {
        Plan plan = new PlanSketch()
            .Wall("shell", null, (0, 0), (6, 0), (6, 3), (0, 3), (0, 0)).Opening(new OpeningPlace.InWall("shell"), 1)
            .Opening(new OpeningPlace.InWall("shell 2"), 1).BuildClean();
        Assert.Equal([1, 1, 0, 0], plan.Walls.Select(w => w.Openings.Count));
    }

    [Fact]
    public void An_opening_keeps_its_leaf_and_its_state()
    {
        OpeningDraft draft = new(
            "d", OpeningKind.Door, new OpeningPlace.Between("den", "hall"), 0.1, 0.8, 0, 2, PlanSketch.Inner, true, default);
        List<Problem> problems = [];
        PlanDraft level = new(
            "den",
            PlanSketch.Height,
            PlanSketch.Outer,
            PlanSketch.Inner,
            [
                new RoomDraft("den", [new(0, 0), new(4, 0), new(4, 3), new(0, 3)], default),
                new RoomDraft("hall", [new(4, 0), new(6, 0), new(6, 3), new(4, 3)], default),
            ],
            [],
            [draft]);
        Plan plan = PlanBuilder.Build(level, new PlanProblems("house.yaml", problems, LengthFormat.Metric));
        Opening opening = Assert.Single(plan.Walls.SelectMany(w => w.Openings));
        Assert.Equal((PlanSketch.Inner, true), (opening.Leaf, opening.IsOpen));
    }
}
