using System.Numerics;
using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Tests.Judges;

namespace LinkMargin.Engine.Tests.Propagation;

public sealed class KnifeEdgeTests
{
    // Of a logarithm: two v that differ in their last digit alone may come out the other way round.
    private const double RoundingDb = 1e-12;

    private static readonly double Wavelength = Frequency.FromMegahertz(2440).WavelengthMetres;

    [Fact]
    public void Matches_the_published_equations() =>
        Assert.All(ReferenceTable.Read("p526-knife-edge.csv").Rows, row =>
        {
            // A hair above the limit, so that the row at −0.78 shows the formula.
            row.AssertPrinted("approximation_db", KnifeEdge.LossDb(row.Number("v") + 1e-9));
            row.AssertPrinted("exact_db", ExactKnifeEdge.LossDb(row.Number("v")));
        });

    [Fact]
    public void Matches_worked_geometries() =>
        Assert.All(ReferenceTable.Read("p526-knife-edge-geometry.csv").Rows, row =>
        {
            double v = ExactKnifeEdge.Parameter(
                row.Number("height_m"), row.Number("first_m"), row.Number("second_m"), Wavelength);
            row.AssertPrinted("v", v);
            row.AssertPrinted("loss_db", KnifeEdge.LossDb(v));
        });

    [Fact]
    public void Is_nothing_at_and_below_the_limit_and_almost_nothing_just_above()
    {
        Assert.Equal(0, KnifeEdge.LossDb(KnifeEdge.LeastParameter));
        Assert.Equal(0, KnifeEdge.LossDb(-5));
        Assert.InRange(KnifeEdge.LossDb(Math.BitIncrement(KnifeEdge.LeastParameter)), 0, 0.005);
    }

    [Fact, Law]
    public void Follows_another_administrations_approximation()
    {
        // 6.02 + 9.11·v − 1.27·v² for 0 ≤ v < 2.4, as in the published source of the US irregular terrain model.
        Gen.Double[0, 2.4].ForAll(v =>
            Assert.Equal(6.02 + (9.11 * v) - (1.27 * v * v), ExactKnifeEdge.LossDb(v), 0.11));
    }

    [Fact, Law]
    public void The_approximation_is_close_to_the_exact_form_from_the_edge_on() =>
        Gen.Double[-0.5, 50].ForAll(v => Assert.Equal(ExactKnifeEdge.LossDb(v), KnifeEdge.LossDb(v), 0.15));

    [Fact, Law]
    public void A_higher_edge_never_costs_less() =>
        Gen.Select(Gen.Double[-3, 30], Gen.Double[0, 1]).ForAll(
            (v, more) => Assert.True(KnifeEdge.LossDb(v + more) >= KnifeEdge.LossDb(v) - RoundingDb),
            also: [4085435800567905352]);

    [Fact, Law]
    public void In_the_shadow_the_exact_loss_grows_too() =>
        Gen.Select(Gen.Double[0, 30], Gen.Double[0.001, 1]).ForAll((v, more) =>
            Assert.True(ExactKnifeEdge.LossDb(v + more) > ExactKnifeEdge.LossDb(v)));

    [Fact, Law]
    public void What_passes_above_an_edge_and_what_passes_below_make_the_whole_field() =>
        Gen.Double[-10, 10].ForAll(v =>
            Assert.Equal(0, (FresnelIntegral.ShareBeyond(v) + FresnelIntegral.ShareBeyond(-v) - Complex.One).Magnitude, 1e-12));

    [Fact, Law]
    public void The_detour_gives_the_same_parameter_where_the_edge_is_low() =>
        Gen.Select(Gen.Double[-0.3, 0.3], Gen.Double[5, 50], Gen.Double[5, 50]).ForAll((height, first, second) =>
        {
            double detour = KnifeEdge.DetourMetres(new(0, 0, 0), new(first, 0, height), new(first + second, 0, 0));
            double v = ExactKnifeEdge.Parameter(height, first, second, Wavelength);
            Assert.Equal(v, KnifeEdge.ParameterOfDetour(detour, height > 0, Wavelength), 0.002);
            Assert.Equal(v, ExactKnifeEdge.Parameter(height, second, first, Wavelength), 1e-12);
            Assert.Equal(v, Math.Sqrt(2) * height / FresnelZone.FirstRadiusMetres(Wavelength, first, second), 1e-9);
        });

    [Fact, Law]
    public void The_detour_is_the_difference_of_lengths_with_more_digits()
    {
        Gen.Double[-5, 5].Array[9].ForAll(c =>
        {
            Point3 from = new(c[0], c[1], c[2]), over = new(c[3], c[4], c[5]), to = new(c[6], c[7], c[8]);
            double difference = from.DistanceTo(over) + over.DistanceTo(to) - from.DistanceTo(to);
            Assert.Equal(difference, KnifeEdge.DetourMetres(from, over, to), 1e-12);
        });

        // h²/2·(1/d1 + 1/d2) with h 1 µm: far below the last digit of the lengths themselves.
        double expected = 0.5e-12 * ((1 / 2.0) + (1 / 3.0));
        Assert.Equal(1, KnifeEdge.DetourMetres(new(0, 0, 0), new(2, 1e-6, 0), new(5, 0, 0)) / expected, 1e-9);
        Assert.Equal(0, KnifeEdge.DetourMetres(new(0, 0, 0), new(0, 0, 0), new(0, 0, 0)));
    }

    [Fact]
    public void Refuses_a_wavelength_of_zero_and_takes_a_detour_below_zero_as_none()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => KnifeEdge.ParameterOfDetour(0.1, true, 0));
        Assert.Equal(0, KnifeEdge.ParameterOfDetour(-1e-15, true, Wavelength));
    }
}
