using System.Numerics;
using CsCheck;
using LinkMargin.Engine.Propagation;

namespace LinkMargin.Engine.Tests.Propagation;

public sealed class PartialScreenTests
{
    private static readonly Gen<double> Amplitude =
        Gen.Frequency((4, Gen.Double[0, 1]), (1, Gen.Const(0.0)), (1, Gen.Const(1.0)));

    private static readonly Gen<(double Near, double Far)> Axis = Gen.Select(Gen.Double[-4, 4], Gen.Double[0, 5], Gen.Int[0, 3])
        .Select((near, width, kind) => (near, kind == 0 ? double.PositiveInfinity : width - near));

    private static readonly Gen<ScreenEdges> Edges =
        Gen.Select(Axis, Axis, (x, y) => new ScreenEdges(x.Near, x.Far, y.Near, y.Far));

    [Fact]
    public void A_screen_without_end_is_its_material() =>
        Amplitude.Sample(amplitude =>
        {
            ScreenEdges edges = ScreenEdges.HalfPlane(double.PositiveInfinity);
            Assert.Equal(amplitude * amplitude, PartialScreen.MeanPowerRatio(amplitude, edges), 1e-12);
            Assert.Equal(amplitude, PartialScreen.Field(amplitude, edges).Real, 1e-12);
        });

    [Fact]
    public void A_screen_of_no_width_is_not_there() =>
        Gen.Select(Amplitude, Gen.Double[-5, 5]).Sample((amplitude, v) =>
        {
            ScreenEdges edges = ScreenEdges.Strip(v, -v);
            Assert.Equal(1, PartialScreen.MeanPowerRatio(amplitude, edges), 0.01);
            Assert.Equal(0, (PartialScreen.Field(amplitude, edges) - Complex.One).Magnitude, 1e-12);
        });

    [Fact]
    public void A_clear_material_is_not_there() =>
        Edges.Sample(edges =>
        {
            Assert.Equal(1, PartialScreen.MeanPowerRatio(1, edges), 1e-12);
            Assert.Equal(0, (PartialScreen.Field(1, edges) - Complex.One).Magnitude, 1e-12);
        });

    [Fact]
    public void On_the_edge_of_a_half_plane_half_of_each_field_arrives() =>
        Amplitude.Sample(amplitude =>
        {
            double expected = Math.Pow((1 + amplitude) / 2, 2);
            ScreenEdges edge = ScreenEdges.HalfPlane(0);
            Assert.Equal((1 + amplitude) / 2, PartialScreen.Field(amplitude, edge).Real, 1e-12);
            Assert.Equal(expected, PartialScreen.MeanPowerRatio(amplitude, edge), 0.002); // J(0) is 6.03, not 6.02 dB
        });

    [Fact]
    public void An_opaque_half_plane_is_the_knife_edge() =>
        Gen.Double[-5, 30].Sample(v =>
        {
            Assert.Equal(KnifeEdge.LossDb(v), PartialScreen.MeanLossDb(400, ScreenEdges.HalfPlane(v)), 0.005);
            Assert.Equal(
                0, (PartialScreen.Field(0, ScreenEdges.HalfPlane(v)) - KnifeEdge.Coefficient(v)).Magnitude, 1e-12);
        });

    [Fact]
    public void Deep_behind_an_opaque_screen_it_is_the_mean_of_the_finite_screen() =>
        Gen.Select(Gen.Double[2.5, 20], Gen.Double[2.5, 20], Gen.Double[2.5, 20]).Sample((left, right, top) =>
        {
            double[] lossesDb = [KnifeEdge.LossDb(left), KnifeEdge.LossDb(right), KnifeEdge.LossDb(top)];
            double expected = FiniteScreen.MeanLossDb(lossesDb).Value;
            var edges = new ScreenEdges(left, right, double.PositiveInfinity, top);
            Assert.Equal(expected, PartialScreen.MeanLossDb(400, edges), 0.15);
        });

    [Fact]
    public void Is_never_below_the_material_and_never_a_gain() =>
        Gen.Select(Amplitude, Edges).Sample((amplitude, edges) =>
            Assert.InRange(PartialScreen.MeanPowerRatio(amplitude, edges), (amplitude * amplitude) - 1e-12, 1 + 1e-12));

    [Fact]
    public void Never_falls_as_the_material_clears_or_any_edge_draws_back() =>
        Gen.Select(Gen.Double[0, 0.9], Edges, Gen.Double[0, 0.1], Gen.Int[0, 4]).Sample((amplitude, edges, step, which) =>
        {
            double before = PartialScreen.MeanPowerRatio(amplitude, edges);
            ScreenEdges smaller = which switch
            {
                0 => edges with { Left = edges.Left - Math.Min(step, edges.Left + edges.Right) },
                1 => edges with { Right = edges.Right - Math.Min(step, edges.Left + edges.Right) },
                2 => edges with { Bottom = edges.Bottom - Math.Min(step, edges.Bottom + edges.Top) },
                3 => edges with { Top = edges.Top - Math.Min(step, edges.Bottom + edges.Top) },
                _ => edges,
            };
            double after = PartialScreen.MeanPowerRatio(which == 4 ? amplitude + step : amplitude, smaller);
            Assert.True(after >= before - 1e-12, $"{before} became {after}");
        });

    [Fact]
    public void A_hair_of_any_edge_moves_the_answer_by_a_hair() =>
        Gen.Select(Amplitude, Edges).Sample((amplitude, edges) =>
        {
            const double Hair = 1e-6;
            double here = PartialScreen.MeanPowerRatio(amplitude, edges);
            ScreenEdges moved = new(edges.Left + Hair, edges.Right + Hair, edges.Bottom + Hair, edges.Top + Hair);
            Assert.InRange(Math.Abs(PartialScreen.MeanPowerRatio(amplitude, moved) - here), 0, 10 * Hair);
        });

    [Fact]
    public void Mirrored_or_turned_it_is_the_same() =>
        Gen.Select(Amplitude, Edges).Sample((amplitude, edges) =>
        {
            double here = PartialScreen.MeanPowerRatio(amplitude, edges);
            ScreenEdges mirrored = new(edges.Right, edges.Left, edges.Top, edges.Bottom);
            ScreenEdges turned = new(edges.Bottom, edges.Top, edges.Left, edges.Right);
            Assert.Equal(here, PartialScreen.MeanPowerRatio(amplitude, mirrored), 1e-14);
            Assert.Equal(here, PartialScreen.MeanPowerRatio(amplitude, turned), 1e-14);
        });

    [Theory]
    [InlineData(0.0, 2.0)]
    [InlineData(0.3, 2.0)]
    [InlineData(0.7, 1.0)]
    public void Is_the_rippling_fields_local_mean_over_places_and_phases(double amplitude, double worstDb)
    {
        // The exact field's power, averaged over shifts of ±0.35 in v (about ±λ/2 where R1 is 0.25 m) along both axes and, for
        // what passes through, over phases of τ within ±90°, since a material's delay is seldom known.
        double sum = 0, sumOfSquares = 0;
        int count = 0;
        foreach (double half in (double[])[0.6, 1, 1.5, 2, 3])
        {
            foreach (double offset in (double[])[0, 0.5, 1, 1.5, 2, 3])
            {
                foreach (double top in (double[])[1, 2, 4])
                {
                    var edges = new ScreenEdges(half - offset, half + offset, double.PositiveInfinity, top);
                    double ratio = PartialScreen.MeanPowerRatio(amplitude, edges) / LocalMean(amplitude, edges);
                    double differenceDb = 10 * Math.Log10(ratio);
                    (sum, sumOfSquares, count) = (sum + differenceDb, sumOfSquares + (differenceDb * differenceDb), count + 1);
                }
            }
        }

        Assert.InRange(sum / count, -0.5, 0.5);
        Assert.InRange(Math.Sqrt(sumOfSquares / count), 0, worstDb);
    }

    [Fact]
    public void Refuses_an_amplifying_material() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PartialScreen.MeanPowerRatio(1.0001, ScreenEdges.HalfPlane(1)));

    private static double LocalMean(double amplitude, ScreenEdges edges)
    {
        double sum = 0;
        int count = 0;
        for (double dx = -0.35; dx <= 0.351; dx += 0.07)
        {
            for (double dy = -0.35; dy <= 0.351; dy += 0.07)
            {
                var moved = new ScreenEdges(edges.Left + dx, edges.Right - dx, edges.Bottom - dy, edges.Top + dy);
                for (double phase = -Math.PI / 2; phase <= 1.6; phase += Math.PI / 6)
                {
                    double magnitude = PartialScreen.Field(Complex.FromPolarCoordinates(amplitude, phase), moved).Magnitude;
                    (sum, count) = (sum + (magnitude * magnitude), count + 1);
                }
            }
        }

        return sum / count;
    }
}
