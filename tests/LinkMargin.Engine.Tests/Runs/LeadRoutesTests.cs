using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Runs;

/// <summary>Leads in one room of 5 m by 4 m and 2.5 m high, worked by hand.</summary>
public sealed class LeadRoutesTests
{
    private const double Half = 0.05; // half a wall

    private static readonly Material Plaster = SimpleHouse.Material("plaster", 3) with { ThicknessMetres = 2 * Half };
    private static readonly Room Den = new("den", new Polygon([new(0, 0), new(5, 0), new(5, 4), new(0, 4)]));

    /// <summary>From a console at the south wall: within reach straight, whatever is between.</summary>
    [Fact]
    public void Within_reach_it_is_laid_straight() => Assert.Equal(0.2 + 0.7, Length(House(), At(1, 0.2, 0.5), At(1.2, 0.2, 1.2)), 1e-9);

    /// <summary>0.2 m to the wall, 3 m along it, 0.9 m up it, 0.1 m off it.</summary>
    [Fact]
    public void Along_one_wall_it_is_square() => Assert.Equal(0.2 + 3 + 0.9 + 0.1, Length(House(), At(1, 0.2, 0.5), At(4, 0.1, 1.4)), 1e-9);

    /// <summary>Round the corner: 4 m to it and 2 m on, with the ends off their walls, and not 3.9 m across the room.</summary>
    [Fact]
    public void Round_a_corner_it_follows_both_walls() => Assert.Equal(0.2 + 4 + 2 + 0.1, Length(House(), At(1, 0.2, 0.5), At(4.9, 2, 0.5)), 1e-9);

    /// <summary>Farther from walls than it hangs freely, it goes down to the floor, and up at the other end.</summary>
    [Fact]
    public void In_the_middle_of_a_room_it_lies_on_the_floor() => Assert.Equal(0.5 + 1.5 + 3 + 0.1 + 0.7, Length(House(), At(1, 1.5, 0.5), At(4, 0.1, 0.7)), 1e-9);

    /// <summary>A door of 0.8 m by 2 m between: up to its head and down again.</summary>
    [Fact]
    public void It_goes_over_a_door() =>
        Assert.Equal(0.1 + 1.5 + 3 + 1.5 + 0.1, Length(House(new Opening("door", OpeningKind.Door, 2, 0.8, 0, 2, null, false)), At(1, 0.1, 0.5), At(4, 0.1, 0.5)), 1e-9);

    /// <summary>A window with its sill at 0.9 m: under it, at the height of the ends.</summary>
    [Fact]
    public void It_goes_under_a_window() =>
        Assert.Equal(0.1 + 3 + 0.1, Length(House(new Opening("window", OpeningKind.Window, 2, 0.8, 0.9, 1.2, null, false)), At(1, 0.1, 0.5), At(4, 0.1, 0.5)), 1e-9);

    /// <summary>A chimney breast to the ceiling, 0.4 m deep, against the wall: out and in again.</summary>
    [Fact]
    public void It_goes_round_what_stands_against_the_wall()
    {
        var breast = new Fixture("breast", 0, new Point2(2.5, Half + 0.2), 1, 0.4, 0, 0, 2.5, Plaster);
        House house = House() with { Fixtures = [breast] };
        Assert.Equal(0.1 + 3 + 0.1 + (2 * 0.4), Length(house, At(1, 0.1, 0.5), At(4, 0.1, 0.5)), 1e-9);
        Assert.Equal(0.2 + 0.5 + 0.4 + 1 + 0.1, Length(house, At(2.5, 0.6, 0.5), At(1, 0.1, 0.5)), 1e-9); // begins in front of it
        House low = House() with { Fixtures = [breast with { ToMetres = 0.7 }] };
        Assert.Equal(0.1 + 3 + 0.1 + (2 * 0.2), Length(low, At(1, 0.1, 0.5), At(4, 0.1, 0.5)), 1e-9); // over its top is shorter
        House shell = House() with { Fixtures = [breast with { IsShell = true }] };
        Assert.Equal(0.1 + 3 + 0.1, Length(shell, At(1, 0.1, 0.5), At(4, 0.1, 0.5)), 1e-9);
    }

    [Fact]
    public void On_one_piece_of_furniture_it_is_laid_straight() =>
        Assert.Equal(2.5, Length(House(), At(1.5, 2, 0.5) with { Fixture = "table" }, At(3.5, 2.5, 0.5) with { Fixture = "table" }), 1e-9);

    /// <summary>A cabinet of 2 m: 1 m along it and 0.9 m beyond its end is within reach of it.</summary>
    [Fact]
    public void Within_reach_of_what_it_begins_in_it_is_laid_straight()
    {
        var cabinet = new Fixture("cabinet", 0, new Point2(2, 1.5), 2, 0.4, 0, 0, 0.6, Plaster) { IsShell = true };
        House house = House() with { Fixtures = [cabinet] };
        Assert.Equal(1.9 + 0.2, Length(house, At(2, 1.5, 0.3) with { Fixture = "cabinet" }, At(3.9, 1.5, 0.5)), 1e-9);
        Assert.True(Length(house, At(2, 1.5, 0.3) with { Fixture = "cabinet" }, At(4.1, 1.5, 0.5)) > 3);
    }

    [Fact]
    public void Without_walls_nothing_leads_beyond_reach() =>
        Assert.Equal(double.PositiveInfinity, Length(SimpleHouse.Of(new Level("level", 0, 2.5) { Rooms = [Den] }), At(1, 0.2, 0.5), At(4, 0.2, 0.5)));

    private static double Length(House house, CablePlace from, CablePlace to) => new LeadRoutes(house, from, Den).LengthsTo([to])[0];

    private static CablePlace At(double x, double y, double height) => new("", 0, new Point2(x, y), height, null);

    private static House House(params Opening[] inSouthWall)
    {
        IReadOnlyList<Point2> corners = Den.Outline.Corners;
        return SimpleHouse.Of(new Level("level", 0, 2.5)
        {
            Rooms = [Den],
            Walls = [.. corners.Select((corner, i) => new Wall($"wall {i}", corner, corners[(i + 1) % 4], 0, 2.5, Plaster) { Openings = i == 0 ? inSouthWall : [] })],
        });
    }
}
