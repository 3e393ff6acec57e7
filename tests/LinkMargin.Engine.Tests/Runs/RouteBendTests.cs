using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Runs;

namespace LinkMargin.Engine.Tests.Runs;

/// <summary>Corners of a route, their sum, and the stretches it is pulled in: at most 360° between places to pull from (common practice).</summary>
public sealed class RouteBendTests
{
    [Fact]
    public void A_straight_route_has_no_bends()
    {
        Route route = Staircase(0, LegKind.AlongFloor);
        Assert.Empty(route.Bends);
        Assert.Equal(new PullStretch(null, 0, 0), route.Stretches.Single());
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(4, 1)]
    [InlineData(5, 2)]
    [InlineData(9, 2)]
    [InlineData(10, 3)]
    public void Right_angles_add_up_to_four_in_a_stretch(int bends, int stretches)
    {
        Route route = Staircase(bends, LegKind.AlongFloor);
        Assert.Equal((bends, 90.0 * bends), (route.Bends.Count, Math.Round(route.BendDegrees, 6)));
        Assert.Equal(stretches, route.Stretches.Count);
        Assert.All(route.Stretches, stretch => Assert.InRange(stretch.Degrees, 0, 360.001));
        Assert.Equal(bends, route.Stretches.Sum(stretch => stretch.Bends) + stretches - 1); // at a place to pull from there is no bend left
    }

    [Fact]
    public void Within_a_floor_no_hand_gets_to_a_bend()
    {
        Route route = Staircase(6, LegKind.InFloor);
        PullStretch only = Assert.Single(route.Stretches);
        Assert.Equal(540, only.Degrees, 1e-6);
    }

    [Fact]
    public void A_passage_has_the_bends_that_the_house_file_says_once()
    {
        RouteLeg up = new(LegKind.ThroughPassage, "chase", new(0, 0, 0), new(0, 0, 2), 2, 0) { InnerBends = 2 };
        RouteLeg over = new(LegKind.ThroughPassage, "chase", new(0, 0, 2), new(1, 0, 2), 1, 0) { InnerBends = 2 };
        Assert.Equal(180, new Route([up, over]).BendDegrees, 1e-9);
        Assert.Equal(90, new Route([up with { InnerBends = 0 }, over with { InnerBends = 0, Where = "other" }]).BendDegrees, 1e-9);
    }

    [Fact]
    public void A_hole_through_a_wall_is_two_bends()
    {
        RouteLeg along = new(LegKind.AlongCeiling, "den", new(0, 0, 2), new(1, 0, 2), 1, 0), on = along with { Where = "hall", From = new(1, 0, 2), To = new(2, 0, 2) };
        RouteLeg hole = new(LegKind.ThroughWall, "spine", new(1, 0, 2), new(1, 0, 2), 0.1, 1);
        Assert.Equal(180, new Route([along, hole, on]).BendDegrees, 1e-9);
        Assert.Equal(180, new Route([along, hole with { To = new(1, 0.1, 2) }, on]).BendDegrees, 1e-9);
    }

    [Fact]
    public void A_leg_with_a_corner_bends_there()
    {
        RouteLeg leg = new(LegKind.ToWall, "den", new(0, 0, 1), new(1, 0, 0), 2, 0) { Corner = new Point3(1, 0, 1) };
        Assert.Equal(90, new Route([leg]).BendDegrees, 1e-9);
        Assert.Equal(45, new Route([leg with { Corner = null }, new(LegKind.AlongFloor, "den", new(1, 0, 0), new(2, 0, 0), 1, 0)]).BendDegrees, 1e-9);
    }

    /// <summary>The rope's formula: e to the friction times the angle; half a turn at 0.4 is e^1.2566 = 3.51.</summary>
    [Fact]
    public void Force_grows_with_the_angle() => Assert.Equal(3.51, new PullStretch(null, 2, 180).ForceTimes, 0.005);

    // East, north, east, north.
    private static Route Staircase(int bends, LegKind kind)
    {
        List<RouteLeg> legs = [];
        Point3 at = new(0, 0, 0);
        for (int i = 0; i <= bends; i++)
        {
            Point3 next = at + (i % 2 == 0 ? new Point3(1, 0, 0) : new Point3(0, 1, 0));
            legs.Add(new RouteLeg(kind, $"{i}", at, next, 1, 0));
            at = next;
        }

        return new Route(legs);
    }
}
