using CsCheck;
using LinkMargin.Engine.Materials;

namespace LinkMargin.Engine.Tests.Propagation;

public sealed class RibShareTests
{
    private const double Width = 0.047;
    private const double Depth = 0.22;
    private const double Spacing = 0.4;

    private static readonly Gen<double> Radius = Gen.Double[0.02, 0.8];
    private static readonly Gen<double> Offset = Gen.Double[-1, 1];

    [Fact]
    public void A_small_zone_straight_above_a_joist_is_all_covered() =>
        Assert.Equal(1, RibShare.Covered(0.02, 0, 0, 1, 0, new(Width, Depth, Spacing), 0), 1e-12);

    [Fact]
    public void A_small_zone_between_two_joists_is_free() =>
        Assert.Equal(0, RibShare.Covered(0.02, 0, 0, 1, 0, new(Width, Depth, Spacing), Spacing / 2), 1e-12);

    [Fact]
    public void A_zone_centred_on_a_joists_face_is_half_covered() =>
        Assert.Equal(0.5, RibShare.Covered(0.02, 0, 0, 1, 0, new(Width, Depth, Spacing), Width / 2), 1e-12);

    [Fact]
    public void A_point_on_a_joists_face_counts_half()
    {
        Assert.Equal(1, RibShare.Covered(0, 0, 0, 1, 0, new(Width, Depth, Spacing), 0));
        Assert.Equal(0.5, RibShare.Covered(0, 0, 0, 1, 0, new(Width, Depth, Spacing), Width / 2));
        Assert.Equal(0, RibShare.Covered(0, 0, 0, 1, 0, new(Width, Depth, Spacing), Width));
    }

    [Fact]
    public void A_central_strip_takes_the_circular_segments_share()
    {
        // One joist over the centre of a disc of radius 0.1: 1 less two segments of half-angle acos(0.0235/0.1).
        double half = Math.Acos(0.235);
        double segments = ((2 * half) - Math.Sin(2 * half)) / Math.PI;
        Assert.Equal(1 - segments, RibShare.Covered(0.1, 0, 0, 1, 0, new(Width, Depth, Spacing), 0), 1e-12);
    }

    [Fact]
    public void Along_the_run_a_slant_changes_nothing()
    {
        double straight = RibShare.Covered(0.3, 0, 0, 1, 30, new(Width, Depth, Spacing), 0.1);
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(30));
        Assert.Equal(straight, RibShare.Covered(0.3, 5 * cos, 5 * sin, 1, 30, new(Width, Depth, Spacing), 0.1), 1e-12);
    }

    [Fact]
    public void A_flat_ray_across_the_joists_meets_them_everywhere()
    {
        double justOpen = (Spacing - Width) / Depth;
        Assert.Equal(1, RibShare.CoveredAcross(0.3, justOpen * 1.0001, 1, new(Width, Depth, Spacing), 0.2));
        Assert.InRange(RibShare.CoveredAcross(0.3, justOpen * 0.9999, 1, new(Width, Depth, Spacing), 0.2), 0.999, 1);
        Assert.Equal(1, RibShare.CoveredAcross(0.3, 1, 0, new(Width, Depth, Spacing), 0.2));
    }

    [Fact]
    public void Ribs_of_no_depth_cover_their_own_width_at_any_slant()
    {
        Assert.Equal(Width / Spacing, RibShare.CoveredAcross(0.3, 1, 0, new(Width, 0, Spacing), 0.2), 1e-12);
        Assert.Equal(Width / Spacing, RibShare.CoveredAcross(0.3, 1, 0, new(Width, 0, Spacing), null), 1e-12);
    }

    [Fact]
    public void A_zone_of_a_great_many_ribs_does_not_step_where_the_mean_takes_over()
    {
        double reach = RibShare.MostRibsEachSide * Spacing;
        double summed = RibShare.CoveredAcross(reach * 0.999999, 0, 1, new(Width, Depth, Spacing), 0);
        double mean = RibShare.CoveredAcross(reach * 1.000001, 0, 1, new(Width, Depth, Spacing), 0);
        Assert.Equal(Width / Spacing, mean, 1e-12);
        Assert.InRange(Math.Abs(summed - mean), 0, 1e-6);
    }

    [Fact, Law]
    public void Agrees_with_rays_cast_through_the_zone() =>
        Gen.Select(Gen.Double[0.1, 0.6], Gen.Double[-1.2, 1.2], Gen.Double[-1, 1], Gen.Double[0, 360], Offset)
            .ForAll(
                (radius, dx, dy, run, offset) =>
                {
                    double expected = CastRays(radius, dx, dy, 1, run, offset);
                    double actual = RibShare.Covered(radius, dx, dy, 1, run, new(Width, Depth, Spacing), offset);
                    Assert.InRange(actual, expected - 0.005, expected + 0.005);
                },
                cases: 60);

    [Fact, Law]
    public void The_mean_over_positions_is_the_answer_for_an_unknown_position() =>
        Gen.Select(Radius, Gen.Double[0, 1.5]).ForAll(
            (radius, across) =>
            {
                const int Steps = 4000;
                double mean = Enumerable.Range(0, Steps).Average(i =>
                    RibShare.CoveredAcross(radius, across, 1, new(Width, Depth, Spacing), (i + 0.5) * Spacing / Steps));
                double unknown = RibShare.CoveredAcross(radius, across, 1, new(Width, Depth, Spacing), null);
                Assert.Equal(unknown, mean, 1e-4);
            },
            cases: 50);

    [Fact, Law]
    public void Turning_everything_reversing_the_ray_or_counting_from_another_joist_changes_nothing() =>
        Gen.Select(Radius, Gen.Double[-2, 2], Gen.Double[-2, 2], Gen.Double[-180, 180], Offset, Gen.Int[-3, 3]).ForAll(
            (radius, dx, dy, turn, offset, joist) =>
            {
                double plain = RibShare.Covered(radius, dx, dy, 1, 20, new(Width, Depth, Spacing), offset);
                (double sin, double cos) = Math.SinCos(double.DegreesToRadians(turn));
                double turned = RibShare.Covered(
                    radius, (dx * cos) - (dy * sin), (dx * sin) + (dy * cos), 1, 20 + turn, new(Width, Depth, Spacing), offset);
                Assert.Equal(plain, turned, 1e-9);
                Assert.Equal(plain, RibShare.Covered(radius, -dx, -dy, -1, 20, new(Width, Depth, Spacing), offset), 1e-9);
                Assert.Equal(plain, RibShare.Covered(radius, dx, dy, 1, 200, new(Width, Depth, Spacing), -offset), 1e-9);
                Assert.Equal(
                    plain, RibShare.Covered(radius, dx, dy, 1, 20, new(Width, Depth, Spacing), offset + (joist * Spacing)), 1e-9);
            });

    [Fact, Law]
    public void A_step_of_a_millimetre_moves_the_share_little_and_it_stays_a_share() =>
        Gen.Select(Gen.Double[0.1, 0.8], Gen.Double[0, 3], Offset).ForAll(
            (radius, across, offset) =>
            {
                double here = RibShare.CoveredAcross(radius, across, 1, new(Width, Depth, Spacing), offset);
                double there = RibShare.CoveredAcross(radius, across, 1, new(Width, Depth, Spacing), offset + 0.001);
                Assert.InRange(here, 0, 1);

                // Each edge sweeps at most a diameter's strip, 2·R·1 mm of π·R²; up to 2·(2a/s + 1) edges lie in the zone.
                Assert.InRange(Math.Abs(here - there), 0, 0.002 / (Math.PI * radius) * 2 * ((2 * radius / Spacing) + 2));
            });

    [Fact, Law]
    public void Wider_or_deeper_joists_never_cover_less() =>
        Gen.Select(Radius, Gen.Double[0, 2], Offset, Gen.Double[0, 0.1]).ForAll(
            (radius, across, offset, more) =>
            {
                double plain = RibShare.CoveredAcross(radius, across, 1, new(Width, Depth, Spacing), offset);
                Assert.True(RibShare.CoveredAcross(radius, across, 1, new(Width + more, Depth, Spacing), offset) >= plain - 1e-12);
                Assert.True(RibShare.CoveredAcross(radius, across, 1, new(Width, Depth + more, Spacing), offset) >= plain - 1e-12);
            });

    [Theory]
    [InlineData(0, 0, 90, 0.1, 0.4, -0.1)]
    [InlineData(0.25, 3, 90, 0.0, 0.4, 0.15)] // joists along y, left of the run is −x: −0.25 is 0.15 past the joist at −0.4
    [InlineData(7, 0.5, 0, 0.1, 0.4, 0.0)]
    public void Finds_the_nearest_joist(double x, double y, double run, double first, double spacing, double expected) =>
        Assert.Equal(expected, RibShare.OffsetMetres(x, y, run, first, spacing), 1e-12);

    [Fact]
    public void Refuses_ribs_wider_than_their_spacing()
    {
        Assert.Equal(1, RibShare.CoveredAcross(0.3, 0, 1, new(0.4, 0.1, 0.4), 0), 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => RibShare.CoveredAcross(0.3, 0, 1, new(0.41, 0.1, 0.4), 0));
    }

    /// <summary>
    /// The share of rays, spread evenly over the disc square to the direction, that meet a joist's rectangular section.
    /// Works in the joists' own frame in three dimensions, with no use of shadow widths.
    /// </summary>
    private static double CastRays(double radius, double dx, double dy, double dz, double runDegrees, double offset)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(runDegrees));
        double length = Math.Sqrt((dx * dx) + (dy * dy) + (dz * dz));
        double run = ((dx * cos) + (dy * sin)) / length, across = ((dy * cos) - (dx * sin)) / length, up = dz / length;

        // Two unit vectors square to the ray: one in the plane of the joists' mid plane, one completing the frame.
        double flat = double.Hypot(run, across);
        (double er, double ea) = flat > 1e-9 ? (-across / flat, run / flat) : (1, 0);
        (double fr, double fa, double fu) = (-up * ea, up * er, (run * ea) - (across * er));

        // A sunflower's seeds: even over the disc, and no two on a line with a joist.
        const int Rays = 20_000;
        double turn = Math.PI * (3 - Math.Sqrt(5));
        int met = 0;
        for (int i = 0; i < Rays; i++)
        {
            double rho = radius * Math.Sqrt((i + 0.5) / Rays);
            (double s, double c) = Math.SinCos(turn * i);
            double a = offset + (rho * ((c * ea) + (s * fa))), u = rho * s * fu;
            met += MeetsAJoist(a, u, across, up) ? 1 : 0;
        }

        return (double)met / Rays;
    }

    private static bool MeetsAJoist(double a, double u, double across, double up)
    {
        double atTop = a + (((Depth / 2) - u) / up * across), atBottom = a + (((-Depth / 2) - u) / up * across);
        (double low, double high) = (Math.Min(atTop, atBottom), Math.Max(atTop, atBottom));
        double firstJoist = Math.Ceiling((low - (Width / 2)) / Spacing);
        return firstJoist * Spacing <= high + (Width / 2);
    }
}
