using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Scenes;

/// <summary>
/// Two levels with 0.4 m between: 20 mm of board, a bay of 360 mm, 20 mm of board. The sheets' middles are at 2.79 m,
/// 2.60 m and 2.41 m.
/// </summary>
public sealed class FloorTests
{
    private static readonly Material Board = SimpleHouse.Material("board", 2);
    private static readonly Material Timber = SimpleHouse.Material("timber", 8);
    private static readonly FloorLayer Bay = new(null, 0.36, null);

    private static readonly Polygon Void = new([new(4, 4), new(6, 4), new(6, 6), new(4, 6)]);

    [Fact]
    public void A_slanting_line_crosses_each_layer_once_in_order_from_the_spot()
    {
        // From (0, 0, 1) to (4, 0, 4): height h is passed where x = 4 (h − 1) / 3, 5/3 (h − 1) along the line of 5 m.
        IReadOnlyList<Crossing> up = Met(House(Bay), new Point3(0, 0, 1), new Point3(4, 0, 4));
        Assert.Equal(2, up.Count);
        Assert.Equal(5.0 / 3 * 1.41, up[0].DistanceMetres, 1e-12);
        Assert.Equal(5.0 / 3 * 1.79, up[1].DistanceMetres, 1e-12);
        Assert.All(up, c => Assert.Equal((ObstacleKind.FloorLayer, "floor", 0, 1.0), (c.Kind, c.Name, c.LevelIndex, c.Share)));
        Assert.All(up, c => Assert.Equal(double.RadiansToDegrees(Math.Acos(0.6)), c.IncidenceDegrees, 1e-9));
        IReadOnlyList<Crossing> down = Met(House(Bay), new Point3(4, 0, 4), new Point3(0, 0, 1));
        Assert.Equal(5.0 / 3 * 1.21, down[0].DistanceMetres, 1e-12);
    }

    [Theory]
    [InlineData(1, 2, 0)]
    [InlineData(3, 4, 0)]
    [InlineData(2.4, 2.8, 2)]
    [InlineData(2.6, 4, 1)]
    [InlineData(1, 2.6, 1)]
    public void Only_the_layers_between_the_ends_are_met(double from, double to, int expected)
    {
        Assert.Equal(expected, Met(House(Bay), new Point3(1, 1, from), new Point3(2, 2, to)).Count);
        Assert.Equal(expected, Met(House(Bay), new Point3(2, 2, to), new Point3(1, 1, from)).Count);
    }

    [Theory] // straight up, at places round the void
    [InlineData(5, 5, 0)]
    [InlineData(4.001, 5, 0)]
    [InlineData(3.999, 5, 2)]
    [InlineData(5, 6.001, 2)]
    [InlineData(4, 5, 2)] // its edges and corners are floor
    [InlineData(6, 5, 2)]
    [InlineData(5, 4, 2)]
    [InlineData(6, 6, 2)]
    public void A_void_is_a_hole_up_to_its_edge(double x, double y, int expected) =>
        Assert.Equal(expected, Met(House(Bay, Void), new Point3(x, y, 1), new Point3(x, y, 4)).Count);

    [Fact]
    public void A_slanting_line_may_clip_a_voids_edge()
    {
        // At 45°: over the edge x = 6 by 0.1 m at the upper board, inside by 0.28 m at the lower.
        IReadOnlyList<Crossing> met = Met(House(Bay, Void), new Point3(4.31, 5, 1), new Point3(7.31, 5, 4));
        Assert.Equal(Math.Sqrt(2) * 1.79, Assert.Single(met).DistanceMetres, 1e-12);
    }

    [Fact]
    public void Where_levels_leave_more_room_the_floor_is_stretched_to_fit()
    {
        // 0.8 m between instead of 0.4 m: the sheets' middles at 3.18 m and 2.42 m.
        House house = SimpleHouse.Of(Lower(Bay), new Level("upper", 3.2, 2.4));
        IReadOnlyList<Crossing> met = Met(house, new Point3(0, 0, 0), new Point3(0, 0, 4));
        Assert.Equal([2.42, 3.18], met.Select(c => Math.Round(c.DistanceMetres, 12)));
    }

    [Fact]
    public void Three_levels_have_two_floors()
    {
        House house = SimpleHouse.Of(Lower(Bay), Lower(Bay) with { ElevationMetres = 2.8 }, new Level("top", 5.6, 2.4));
        Assert.Equal([0, 0, 1, 1], Met(house, new Point3(0, 0, 1), new Point3(1, 1, 7)).Select(c => c.LevelIndex));
    }

    [Fact]
    public void A_filled_bay_with_joists_is_both()
    {
        FloorLayer bay = new(SimpleHouse.Material("wool", 1), 0.36, new Ribs(Timber, 0.05, 0.2, 0.4));
        IReadOnlyList<Crossing> met = Met(House(bay, layout: new JoistLayout(0, 0.4, null)), new Point3(0, 0, 1), new Point3(0, 0, 4));
        Assert.Equal(
            ["board", "wool", "timber", "board"], met.OrderBy(c => c.DistanceMetres).Select(c => c.Material.Name));
    }

    [Fact]
    public void Joists_of_unknown_place_cover_width_over_spacing_straight_up() =>
        Assert.Equal(0.05 / 0.4, Joists(null, new Point3(0, 0, 1), new Point3(0, 0, 4)).Share, 1e-12);

    [Theory] // along x at y = 0.1, 0.5, 0.9 …; the ray at x = 3
    [InlineData(0.1)]
    [InlineData(0.3)]
    [InlineData(0.2)]
    public void Joists_of_known_place_cover_the_share_of_the_first_Fresnel_zone_that_lies_over_them(double y)
    {
        // Straight up from 1 m to 4 m: at 2.60 m, d1 = 1.6 and d2 = 1.4; λ = 299792458/2440.68e6 to six digits.
        double radius = Math.Sqrt(0.122832 * 1.6 * 1.4 / 3);
        Crossing met = Joists(0.1, new Point3(3, y, 1), new Point3(3, y, 4));
        Assert.Equal(CoveredBySmallSquares(radius, y - 0.1), met.Share, 1e-3);
    }

    [Theory]
    [InlineData(0, 3, 0.1, 1)]
    [InlineData(90, -0.1, 3, 1)] // along y; left of that run is −x
    public void A_joist_straight_overhead_is_met_wherever_it_runs(double run, double x, double y, double least)
    {
        // Close under the joists the zone is narrower than one of them: λ/4 · … ≈ 14 mm at 1.6 mm below.
        var from = new Point3(x, y, 2.5984);
        Crossing met = Joists(0.1, from, new Point3(x, y, 4), run);
        Assert.InRange(met.Share, least - 1e-12, 1);
    }

    [Fact]
    public void Between_two_joists_close_by_nothing_is_met() =>
        Assert.DoesNotContain(
            Met(HouseWithJoists(0.1, 0), new Point3(3, 0.3, 2.5984), new Point3(3, 0.3, 4)), c => c.Kind == ObstacleKind.Joists);

    [Theory] // amplitudes averaged by hand: 8 dB is an amplitude of 0.398107
    [InlineData(0, 0)]
    [InlineData(1, 8)]
    [InlineData(0.5, 3.1098)] // −20 log10 0.6990536
    [InlineData(0.125, 0.6794)] // −20 log10 0.9247634
    public void What_joists_cost_follows_the_share_they_cover(double share, double expectedDb) =>
        Assert.Equal(expectedDb, CrossingLoss.Db(ObstacleKind.Joists, share, 8), 0.00005);

    [Fact, Law]
    public void Joists_cost_between_nothing_and_all_and_more_share_costs_more() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 5000]).ForAll(
            (a, b, lossDb) =>
            {
                double less = CrossingLoss.Db(ObstacleKind.Joists, Math.Min(a, b), lossDb);
                double more = CrossingLoss.Db(ObstacleKind.Joists, Math.Max(a, b), lossDb);
                const double RoundingDb = 1e-12; // of a logarithm, where two shares differ in their last digits alone
                Assert.InRange(less, 0, more + RoundingDb);
                Assert.InRange(more, less - RoundingDb, lossDb); // never more than the joists alone, rounding included
            },
            also: [7818695523607377972]);

    [Theory]
    [InlineData(ObstacleKind.Wall)]
    [InlineData(ObstacleKind.Opening)]
    [InlineData(ObstacleKind.FloorLayer)]
    [InlineData(ObstacleKind.Fixture)]
    public void Everything_else_costs_its_share_of_the_table_loss(ObstacleKind kind) =>
        Assert.Equal(12, CrossingLoss.Db(kind, 1.5, 8));

    // The share of small squares of a disc about the ray whose middles lie over a joist; joists of 50 mm every 0.4 m.
    private static double CoveredBySmallSquares(double radius, double offset)
    {
        const int Side = 1500;
        int disc = 0, covered = 0;
        for (int i = 0; i < Side; i++)
        {
            for (int j = 0; j < Side; j++)
            {
                double x = radius * (((2 * i) + 1.0) / Side - 1), y = radius * (((2 * j) + 1.0) / Side - 1);
                if ((x * x) + (y * y) < radius * radius)
                {
                    disc++;
                    covered += Math.Abs(Math.IEEERemainder(offset + y, 0.4)) < 0.025 ? 1 : 0;
                }
            }
        }

        return (double)covered / disc;
    }

    private static Crossing Joists(double? first, Point3 from, Point3 to, double run = 0) =>
        Met(HouseWithJoists(first, run), from, to).Single(c => c.Kind == ObstacleKind.Joists);

    private static House HouseWithJoists(double? first, double run) =>
        House(new FloorLayer(null, 0.36, new Ribs(Timber, 0.05, 0.2, 0.5)), layout: new JoistLayout(run, 0.4, first));

    private static House House(FloorLayer bay, Polygon? hole = null, JoistLayout? layout = null) =>
        SimpleHouse.Of(Lower(bay, hole, layout), new Level("upper", 2.8, SimpleHouse.HeightMetres));

    private static Level Lower(FloorLayer bay, Polygon? hole = null, JoistLayout? layout = null) =>
        new("lower", 0, SimpleHouse.HeightMetres)
        {
            Above = new FloorAbove(
                new FloorBuildUp("floor", [new(Board, 0.02, null), bay, new(Board, 0.02, null)], "invented for tests"),
                layout,
                hole is null ? [] : [hole]),
        };

    private static IReadOnlyList<Crossing> Met(House house, Point3 from, Point3 to) => SimpleHouse.Crossings(house, from, to);
}
