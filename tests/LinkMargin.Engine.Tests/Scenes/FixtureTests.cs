using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Scenes;

/// <summary>A box of 2 m by 1 m about (5, 5), from 0.5 m to 1.5 m, against geometry worked by hand.</summary>
public sealed class FixtureTests
{
    private static readonly Material Water =
        SimpleHouse.Material("water", 40) with { Form = LossForm.Bulk, ThicknessMetres = 0.5 };

    private static readonly Fixture Solid = new(
        "box", 0, new Point2(5, 5), 2, 1, 0, 0.5, 1.5, SimpleHouse.Material("board", 4));

    private static readonly Fixture Shell = Solid with { IsShell = true };

    [Fact]
    public void A_solid_sheet_counts_once_however_long_the_way_inside()
    {
        Crossing across = Assert.Single(Met(Solid, new Point3(5, 3, 1), new Point3(5, 7, 1)));
        Crossing along = Assert.Single(Met(Solid, new Point3(3, 5, 1), new Point3(7, 5, 1)));
        Assert.Equal((1, 1), (across.Share, along.Share));
        Assert.Equal((ObstacleKind.Fixture, "box"), (across.Kind, across.Name));
        Assert.Equal(1.5, across.DistanceMetres, 1e-12);
        Assert.Equal(1, along.DistanceMetres, 1e-12);
    }

    [Theory] // ways of known length inside, over the 0.5 m the loss belongs to
    [InlineData(5, 3, 1, 5, 7, 1, 2)] // straight across: 1 m
    [InlineData(3, 5, 1, 7, 5, 1, 4)] // straight along: 2 m
    [InlineData(5, 5, 0, 5, 5, 2, 2)] // straight up: 1 m
    [InlineData(2, 2, 1, 8, 8, 1, 2.8284271247461903)] // across at 45°: √2 m
    [InlineData(3, 4.5, 1, 5, 6.5, 1, 0)] // touches the corner (4, 5.5)
    [InlineData(5, 3, 0, 5, 7, 2, 2.23606797749979)] // across, 2 m up in 4 m: √(1 + 1/4) m
    [InlineData(5, 5, 1, 5, 9, 1, 1)] // from the heart: 0.5 m
    [InlineData(4.5, 5, 1, 5.5, 5, 1, 2)] // all inside: 1 m
    public void Bulk_grows_with_the_way_inside(
        double x1, double y1, double z1, double x2, double y2, double z2, double expected)
    {
        IReadOnlyList<Crossing> met = Met(Solid with { Material = Water }, new Point3(x1, y1, z1), new Point3(x2, y2, z2));
        Assert.Equal(expected == 0 ? 0 : 1, met.Count);
        Assert.Equal(expected, met.Sum(c => c.Share), 1e-12);
    }

    [Theory]
    [InlineData(90)]
    [InlineData(-90)]
    [InlineData(270)]
    public void A_quarter_turn_exchanges_length_and_width(double turn) =>
        Assert.Equal(4, Met(
            Solid with { Material = Water, TurnDegrees = turn }, new Point3(5, 3, 1), new Point3(5, 7, 1)).Sum(c => c.Share), 1e-12);

    [Fact]
    public void A_turned_box_is_turned_anticlockwise()
    {
        // At 30° its long half axis ends at (5 + cos 30°, 5 + sin 30°), and the mirror of that point is outside.
        Fixture turned = Solid with { SizeX = 4, SizeY = 0.2, TurnDegrees = 30 };
        Assert.Single(Met(turned, new Point3(6.6, 5.92, 0), new Point3(6.6, 5.92, 2)));
        Assert.Empty(Met(turned, new Point3(6.6, 4.08, 0), new Point3(6.6, 4.08, 2)));
    }

    [Fact]
    public void A_closed_shell_is_two_panels_from_outside_and_one_from_inside()
    {
        Assert.Equal([1.5, 2.5], Distances(Shell, new Point3(5, 3, 1), new Point3(5, 7, 1)));
        Assert.Equal([0.5], Distances(Shell, new Point3(5, 5, 1), new Point3(5, 7, 1)));
        Assert.Equal([1.5], Distances(Shell, new Point3(5, 3, 1), new Point3(5, 5, 1)));
        Assert.Empty(Met(Shell, new Point3(4.5, 5, 1), new Point3(5.5, 5, 1)));
    }

    [Theory] // from the heart straight out through each side
    [InlineData(BoxSides.East, 9, 5, 1)]
    [InlineData(BoxSides.West, 1, 5, 1)]
    [InlineData(BoxSides.North, 5, 9, 1)]
    [InlineData(BoxSides.South, 5, 1, 1)]
    [InlineData(BoxSides.Top, 5, 5, 3)]
    [InlineData(BoxSides.Bottom, 5, 5, -1)]
    public void Through_an_open_side_a_line_meets_nothing(BoxSides side, double x, double y, double z)
    {
        var heart = new Point3(5, 5, 1);
        var outside = new Point3(x, y, z);
        const BoxSides All = (BoxSides)63;
        Assert.Empty(Met(Shell with { OpenSides = side }, heart, outside));
        Assert.Empty(Met(Shell with { OpenSides = side }, outside, heart));
        Assert.Single(Met(Shell with { OpenSides = All & ~side }, heart, outside));
        Assert.Single(Met(Shell with { OpenSides = All & ~side }, outside, heart));
    }

    [Fact]
    public void An_open_side_turns_with_its_box()
    {
        // Turned a quarter anticlockwise, the east side looks north.
        Fixture turned = Shell with { OpenSides = BoxSides.East, TurnDegrees = 90 };
        Assert.Empty(Met(turned, new Point3(5, 5, 1), new Point3(5, 9, 1)));
        Assert.Single(Met(turned, new Point3(5, 5, 1), new Point3(9, 5, 1)));
    }

    [Fact]
    public void A_line_through_the_edge_of_an_open_side_and_a_panel_meets_the_panel() =>
        Assert.Single(Met(Shell with { OpenSides = BoxSides.West }, new Point3(3.5, 4, 1), new Point3(4.5, 5, 1)));

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_thing_that_stands_on_a_panel_has_not_gone_through_it(bool shell)
    {
        // A console on top of the box, one on the inside of its bottom, one against its side.
        Fixture box = Solid with { IsShell = shell, OpenSides = shell ? BoxSides.South : BoxSides.None };
        Assert.Empty(Met(box, new Point3(5, 5, 1.5), new Point3(5, 1, 2.5)));
        Assert.Empty(Met(box, new Point3(5, 4.5, 1), new Point3(5, 1, 2.5)));
        Assert.Equal(shell ? 0 : 1, Met(box, new Point3(5, 5, 0.5), new Point3(5, 1, 1.5)).Count);
    }

    [Fact]
    public void A_line_along_a_face_is_outside()
    {
        Assert.Empty(Met(Solid, new Point3(3, 5.5, 1), new Point3(7, 5.5, 1)));
        Assert.Empty(Met(Solid, new Point3(3, 5, 1.5), new Point3(7, 5, 1.5)));
        Assert.Single(Met(Solid, new Point3(3, 5.499, 1), new Point3(7, 5.499, 1)));
    }

    [Fact]
    public void Angles_are_those_to_the_side_gone_through()
    {
        Assert.Equal(30, Met(Shell, new Point3(5, 4, 1), new Point3(5 + Math.Tan(Math.PI / 6), 5, 1)).Single().IncidenceDegrees, 1e-9);
        Assert.Equal(0, Met(Shell, new Point3(5, 5, 1), new Point3(5, 5, 3)).Single().IncidenceDegrees, 1e-9);
    }

    [Fact]
    public void A_fixture_stands_on_its_own_level()
    {
        House house = SimpleHouse.Of(new Level("lower", 0, 2.4), new Level("upper", 2.7, 2.4)) with
        {
            Fixtures = [Solid with { LevelIndex = 1 }],
        };
        Assert.Empty(SimpleHouse.Crossings(house, new Point3(5, 3, 1), new Point3(5, 7, 1)));
        Assert.Equal(1, SimpleHouse.Crossings(house, new Point3(5, 3, 3.7), new Point3(5, 7, 3.7)).Single().LevelIndex);
    }

    [Fact, Law]
    public void The_way_inside_is_that_of_a_walk_in_small_steps() =>
        Gen.Select(Gen.Double[-180, 180], Place, Place).ForAll(
            (turn, from, to) =>
            {
                Fixture box = Solid with { Material = Water, TurnDegrees = turn };
                if (RunsAlongAFace(box, from, to))
                {
                    return; // a face is outside: which steps of the walk are inside is a matter of rounding
                }

                double length = from.DistanceTo(to);
                const int Steps = 20_000;
                int inside = Enumerable.Range(0, Steps).Count(i => IsInside(box, from.Towards(to, (i + 0.5) / Steps)));
                double expected = inside * length / Steps / 0.5;
                Assert.Equal(expected, Met(box, from, to).Sum(c => c.Share), 4 * length / Steps);
            },
            cases: 100);

    private static readonly Gen<Point3> Place = Gen.Select(
        Gen.Double[3, 7], Gen.Double[3, 7], Gen.Double[0, 2], (x, y, z) => new Point3(x, y, z));

    private static bool IsInside(Fixture box, Point3 p)
    {
        (double x, double y) = In(box, p);
        return Math.Abs(x) < box.SizeX / 2 && Math.Abs(y) < box.SizeY / 2 && p.Z > box.FromMetres && p.Z < box.ToMetres;
    }

    // A generator of numbers likes round ones, so a line right along a face does turn up.
    private static bool RunsAlongAFace(Fixture box, Point3 from, Point3 to)
    {
        ((double X, double Y) a, (double X, double Y) b) = (In(box, from), In(box, to));
        return Both(a.X, b.X, box.SizeX / 2) || Both(a.X, b.X, -box.SizeX / 2)
            || Both(a.Y, b.Y, box.SizeY / 2) || Both(a.Y, b.Y, -box.SizeY / 2)
            || Both(from.Z, to.Z, box.FromMetres) || Both(from.Z, to.Z, box.ToMetres);

        static bool Both(double one, double other, double face) => Math.Abs(one - face) < 1e-6 && Math.Abs(other - face) < 1e-6;
    }

    private static (double X, double Y) In(Fixture box, Point3 p)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(-box.TurnDegrees));
        double x = p.X - box.Centre.X, y = p.Y - box.Centre.Y;
        return ((x * cos) - (y * sin), (x * sin) + (y * cos));
    }

    private static IReadOnlyList<Crossing> Met(Fixture fixture, Point3 from, Point3 to) =>
        SimpleHouse.Crossings(SimpleHouse.OfFixture(fixture), from, to);

    private static double[] Distances(Fixture fixture, Point3 from, Point3 to) =>
        [.. Met(fixture, from, to).Select(c => Math.Round(c.DistanceMetres, 12))];
}
