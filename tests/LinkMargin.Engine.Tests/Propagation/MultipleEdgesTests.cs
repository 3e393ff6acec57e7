using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Paths.Diffracted;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Tests.Propagation;

public sealed class MultipleEdgesTests
{
    private static readonly double Wavelength = Frequency.FromMegahertz(2440).WavelengthMetres;

    // Heights that make a tight way over all edges: the way turns right a little at each.
    private static readonly Gen<Point3[]> TightWays =
        Gen.Select(Gen.Double[0.5, 5], Gen.Double[0.001, 0.3]).Array[2, 5].Select(legs =>
        {
            List<Point3> way = [new(0, 0, 0)];
            double heading = 0;
            foreach ((double leg, double turn) in legs)
            {
                way.Add(new(way[^1].X + (leg * Math.Cos(heading)), way[^1].Y + (leg * Math.Sin(heading)), 0));
                heading -= turn;
            }

            return way.ToArray();
        });

    [Fact]
    public void No_edge_costs_nothing_and_one_edge_is_a_knife_edge()
    {
        Assert.Equal(0, MultipleEdges.LossDb([new(0, 0, 0), new(3, 0, 0)], Wavelength));
        double detour = double.Hypot(2, 0.5) + double.Hypot(3, 0.5) - 5;
        double expected = KnifeEdge.LossDb(KnifeEdge.ParameterOfDetour(detour, true, Wavelength));
        Assert.Equal(expected, MultipleEdges.LossDb([new(0, 0, 0), new(2, 0, 0.5), new(5, 0, 0)], Wavelength), 1e-9);
    }

    [Fact]
    public void Matches_two_edges_worked_by_hand()
    {
        // λ 0.12286 m; edges 3 m over the line at 200 m and 400 m of 600 m.
        // Main edge: v = 3·√(2/0.12286·(1/200 + 1/400)) = 1.048, J = 14.23 dB.
        // The other over the line from the first tip to the end: 1.5·√(2/0.12286·(1/200 + 1/200)) = 0.605, J = 11.11 dB.
        // α = atan √(200·600/200²) = 60°, p = q: T = 12 − 20·lg(2/(1 − 1/3)) = 12 − 9.54 = 2.46 dB.
        // 14.23 + 11.11 − 2.46 = 22.88 dB.
        double actual = MultipleEdges.LossDb([new(0, 0, 0), new(200, 0, 3), new(400, 0, 3), new(600, 0, 0)], Wavelength);
        Assert.Equal(22.88, actual, 0.02);
    }

    [Fact]
    public void Matches_a_turn_and_a_counter_turn_worked_by_hand()
    {
        // Edges at 200 m (tip 3 m to the left) and 400 m (3 m to the right) of 600 m. From start to second tip the line
        // passes 200 m at −1.5: height 4.5, v = 4.5·√(2/0.12286·(1/200 + 1/200)) = 1.816, J = 18.27 dB, twice.
        // Spreading: 10·lg(400·400/(200·600)) = 1.25 dB. 2·18.27 + 1.25 = 37.78 dB (rounded once).
        double actual = MultipleEdges.LossDb([new(0, 0, 0), new(200, 3, 0), new(400, -3, 0), new(600, 0, 0)], Wavelength);
        Assert.Equal(37.78, actual, 0.02);
    }

    [Fact]
    public void Two_edges_are_near_the_exact_integral()
    {
        IReadOnlyList<ReferenceRow> rows = ReferenceTable.Read("two-knife-edges.csv").Rows;
        double[] differencesDb =
        [
            .. rows.Select(row =>
            {
                double a = row.Number("first_m"), b = row.Number("between_m"), c = row.Number("last_m");
                double lossDb = MultipleEdges.OneSideLossDb(
                    [
                        new(0, 0, 0),
                        new(a, 0, row.Number("first_height_m")),
                        new(a + b, 0, row.Number("second_height_m")),
                        new(a + b + c, 0, 0),
                    ],
                    new(0, 0, -1),
                    Wavelength);
                return lossDb - row.Number("exact_db");
            }),
        ];
        Assert.All(differencesDb, difference => Assert.InRange(difference, -1, 1.7));
        Assert.InRange(differencesDb.Average(), -0.2, 0.8);
    }

    [Fact]
    public void Equal_steps_along_a_line_come_near_one_over_the_number_of_steps()
    {
        // A way that just touches n equally spaced edges keeps 1/(n + 1) of its field (exact; from memory of L. E. Vogler,
        // Radio Science 17 (1982)).
        for (int edges = 1; edges <= 3; edges++)
        {
            Point3[] way = [.. Enumerable.Range(0, edges + 2).Select(i => new Point3(i, 0, 0))];
            Assert.Equal(20 * Math.Log10(edges + 1), MultipleEdges.LossDb(way, Wavelength), edges < 3 ? 0.1 : 0.8);
        }
    }

    // In those also listed two of several edges have the same v to rounding: it must not decide which is the main one.
    [Fact, Law]
    public void Walked_backwards_mirrored_or_turned_it_is_the_same() =>
        TightWays.ForAll(IsTheSameFromEverySide, also: [5708985678931794100, 3501641483540647389, 139263388799052468]);

    [Fact, Law]
    public void A_tight_way_is_the_same_whether_its_sides_are_found_or_reported() =>
        TightWays.ForAll(way => Assert.Equal(
            MultipleEdges.OneSideLossDb(way, new(way[^1].Y - way[0].Y, way[0].X - way[^1].X, 0), Wavelength),
            MultipleEdges.LossDb(way, Wavelength),
            1e-9));

    [Fact]
    public void An_edge_far_clear_of_the_line_and_of_the_others_costs_nothing()
    {
        Point3 down = new(0, 0, -1);
        Point3 start = new(0, 0, 0), end = new(6, 0, 0), high = new(2, 0, 0.4), low = new(2, 0, -2), deep = new(4, 0, -2);
        double one = MultipleEdges.OneSideLossDb([start, high, end], down, Wavelength);
        Assert.Equal(one, MultipleEdges.OneSideLossDb([start, high, deep, end], down, Wavelength), 1e-9);
        Assert.Equal(0, MultipleEdges.OneSideLossDb([start, low, deep, end], down, Wavelength));
    }

    [Fact, Law]
    public void Two_edges_that_rise_or_sink_by_a_hair_change_the_loss_by_a_hair() =>
        Gen.Select(Gen.Double[0.5, 5], Gen.Double[0.5, 5], Gen.Double[0.5, 5], Gen.Double[-0.5, 1], Gen.Double[-0.5, 1]).ForAll(
            (a, b, c, first, second) =>
            {
                double Over(double d1, double h1, double d2, double h2) => MultipleEdges.OneSideLossDb(
                    [new(0, 0, 0), new(d1, 0, h1), new(d2, 0, h2), new(a + b + c, 0, 0)], new(0, 0, -1), Wavelength);
                double At(double h1, double h2) => Over(a, h1, a + b, h2);

                // 1 mm is at most 0.02 in v at these distances, and J climbs by at most 9.5 dB per unit of v.
                Assert.InRange(Math.Abs(At(first + 0.001, second) - At(first, second)), 0, 0.4);
                Assert.InRange(Math.Abs(At(first, second + 0.001) - At(first, second)), 0, 0.4);
                Assert.Equal(At(first, second), Over(c, second, c + b, first), 1e-6);
            });

    [Fact, Law]
    public void Is_no_less_than_its_hardest_edge_and_no_more_than_all_edges_apart() =>
        TightWays.ForAll(way =>
        {
            double lossDb = MultipleEdges.LossDb(way, Wavelength);
            double[] apartDb =
            [
                .. way[1..^1].Select(edge => MultipleEdges.LossDb([way[0], edge, way[^1]], Wavelength)),
            ];
            Assert.InRange(lossDb, apartDb.DefaultIfEmpty(0).Max() - 1e-9, apartDb.Sum() + 1e-9);
        });

    [Fact]
    public void No_path_has_more_edges_than_it_is_trusted_with() =>
        Assert.InRange(DiffractedPaths.MostCorners - 2, 1, MultipleEdges.MostEdges);

    [Fact]
    public void Refuses_points_on_one_another_and_ways_without_an_end()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => MultipleEdges.LossDb([new(0, 0, 0), new(0, 0, 0)], Wavelength));
        Assert.Throws<ArgumentOutOfRangeException>(() => MultipleEdges.LossDb([new(0, 0, 0)], Wavelength));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            MultipleEdges.LossDb([new(0, 0, 0), new(double.NaN, 0, 0), new(1, 0, 0)], Wavelength));
    }

    private static void IsTheSameFromEverySide(Point3[] way)
    {
        double lossDb = MultipleEdges.LossDb(way, Wavelength);
        Assert.Equal(lossDb, MultipleEdges.LossDb([.. way.Reverse()], Wavelength), 1e-6);
        Assert.Equal(lossDb, MultipleEdges.LossDb([.. way.Select(p => new Point3(p.X, -p.Y, 0))], Wavelength), 1e-6);
        Assert.Equal(lossDb, MultipleEdges.LossDb([.. way.Select(p => new Point3(2, p.X, p.Y))], Wavelength), 1e-6);
    }
}
