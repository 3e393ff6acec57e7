using System.Numerics;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths.Body;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;
using Xunit.Abstractions;
using Sizes = LinkMargin.Engine.Paths.Body.Body;

namespace LinkMargin.Engine.Tests.Paths.Body;

/// <summary>A player's shadow against the exact series of a lossy cylinder, and what its ends let past.</summary>
public sealed class BodyShadowTests(ITestOutputHelper output)
{
    // The most that the torso's shadow may differ from the series, root mean square over places behind and beside.
    private const double ShadowDb = 2;

    private static readonly Frequency Frequency = Frequency.FromMegahertz(2440);

    [Theory]
    [InlineData(0.12)]
    [InlineData(0.15)]
    public void The_shadow_of_a_torso_is_that_of_the_series(double radius)
    {
        var differences = new List<double>();
        foreach (ReferenceRow row in ReferenceTable.Read("cylinder-series.csv").Rows)
        {
            if (row.Number("radius_m") == radius && row.Text("side") == "shadow")
            {
                double here = TorsoDb(row, double.Hypot(row.Number("x_m"), row.Number("y_m")), Math.Atan2(row.Number("y_m"), row.Number("x_m")));
                differences.Add(here - row.Number("both_lat_db"));
            }
        }

        double rms = Math.Sqrt(differences.Average(d => d * d));
        output.WriteLine(FormattableString.Invariant(
            $"radius {radius} m, {differences.Count} places: rms {rms:F2} dB, at most {differences.Max(Math.Abs):F2} dB, mean {differences.Average():F2} dB"));
        Assert.True(differences.Count >= 48);
        Assert.InRange(rms, 0, ShadowDb);
    }

    [Fact]
    public void Waves_from_all_around_keep_their_mean()
    {
        foreach (ReferenceRow row in ReferenceTable.Read("cylinder-azimuth-mean.csv").Rows)
        {
            double distance = row.Number("radius_m") + row.Number("d_m");
            int steps = ScatteredMeans.Steps(distance);
            ScatteredMeans torso = TorsoOf(row, distance);
            double mean = Enumerable.Range(0, steps + 1).Sum(i => (i == 0 || i == steps ? 0.5 : 1) / steps * torso.Share(i, FrontShares.OnlyTorso));

            // The reference is at one distance, the engine's mean over half a wavelength of them.
            Assert.InRange(10 * Math.Log10(mean), -0.7, 0.25);
        }
    }

    [Fact]
    public void A_whole_body_moves_energy_and_takes_next_to_none()
    {
        var body = new BodyShadow(Band.Bluetooth.Equivalent);
        double sum = 0, weights = 0;
        foreach (int slope in Enumerable.Range(-17, 35))
        {
            double radians = double.DegreesToRadians(5 * slope), mean = body.Factor(From(0, radians), default, null);
            output.WriteLine(FormattableString.Invariant($"slope {5 * slope} degrees: mean {10 * Math.Log10(mean):F2} dB, facing {Db(body, 0, radians):F2} dB, aside {Db(body, 90, radians):F2} dB, away {Db(body, 180, radians):F2} dB"));
            sum += Math.Cos(radians) * mean;
            weights += Math.Cos(radians);
            Assert.InRange(10 * Math.Log10(mean), -1.2, 0.6);
        }

        output.WriteLine(FormattableString.Invariant($"whole sphere: {10 * Math.Log10(sum / weights):F2} dB"));
        Assert.InRange(10 * Math.Log10(sum / weights), -0.5, 0.3);
    }

    [Fact]
    public void A_path_from_high_above_or_below_passes_the_body()
    {
        var body = new BodyShadow(Band.Bluetooth.Equivalent);
        foreach (double slope in new[] { -85.0, -70, 80, 85 })
        {
            foreach (double turn in new[] { 0.0, 90, 180 })
            {
                Assert.InRange(Db(body, turn, double.DegreesToRadians(slope)), -0.6, 0.6);
            }
        }
    }

    // The first crest beside an edge, 1.37 dB over what the published approximation of a knife edge has.
    private const double RippleDb = 1.4;

    // Shoulders and crown are so near one another that their waves keep some of the phase between them, which a local mean leaves out.
    private const double HeadShare = 0.2;

    // What a finite part of the axis radiates, summed point by point: the phase from a wave's slope along it and the distance to the hands.
    [Fact]
    public void The_ends_of_torso_and_head_take_the_share_of_a_sum_along_the_axis()
    {
        double wavelength = Frequency.WavelengthMetres, k = 2 * Math.PI / wavelength;
        foreach (double slopeDegrees in new[] { -40.0, -25, -10, 0, 15, 30, 40 })
        {
            double slope = double.DegreesToRadians(slopeDegrees);
            FrontShares front = FrontShares.At(slope, Sizes.BehindHandsMetres, wavelength);
            Complex endless = Sum(slope, -30, 30, 0);
            double torso = 0, head = 0;
            const int Heights = 13;
            for (int i = 0; i < Heights; i++)
            {
                // A local mean: hands half a wavelength up and down.
                double up = ((i / (Heights - 1.0)) - 0.5) * wavelength;
                torso += Power(Sum(slope, Sizes.SeatMetres, Sizes.ShouldersMetres, up) / endless) / Heights;
                head += Power(Sum(slope, Sizes.ShouldersMetres, Sizes.CrownMetres, up) / endless) / Heights;
            }

            double torsoShare = (front.Torso * front.Torso) + front.Seat + front.Shoulders;
            double headShare = (front.Head * front.Head) + front.Shoulders + front.Crown;
            output.WriteLine(FormattableString.Invariant(
                $"slope {slopeDegrees}: torso {torsoShare:F3} ({torso:F3}), head {headShare:F3} ({head:F3})"));
            Assert.Equal(10 * Math.Log10(torso), 10 * Math.Log10(torsoShare), RippleDb);
            Assert.Equal(head, headShare, HeadShare);
        }

        Complex Sum(double slope, double from, double to, double up)
        {
            const double Step = 0.001;
            double rho = Sizes.BehindHandsMetres;
            Complex sum = 0;
            foreach (int i in Enumerable.Range(0, (int)Math.Round((to - from) / Step)))
            {
                double z = from + ((i + 0.5) * Step) - up, r = double.Hypot(rho, z);
                double taper = Math.Exp(-z * z / 100); // the ends of an endless line without their ripple
                sum += taper / Math.Sqrt(r) * Complex.FromPolarCoordinates(Step, -k * (r - (z * Math.Sin(slope))));
            }

            return sum;
        }
    }

    // Somebody else on a seat is a box: its shadow against that of a cylinder as wide, hands behind it.
    [Fact]
    public void A_box_for_somebody_else_shadows_about_as_a_cylinder()
    {
        var seat = new Seat("seat", 0, default, 6, 0, 15);
        Fixture torso = Sizes.Of(seat)[0] with { FromMetres = 0, ToMetres = 12 };
        var box = new FixtureBox(torso, new Level("level", -6, 18), _ => 0, 0, -1, 0);
        Complex permittivity = ComplexPermittivity.Of(Sizes.Tissue.Dielectric, Frequency);
        var cylinder = new LossyCylinder(torso.SizeY / 2, permittivity, Frequency.WavelengthMetres, 0);
        var buffer = new TraceBuffer();
        var differences = new List<double>();
        foreach (double behind in new[] { 0.05, 0.1, 0.2, 0.3, 0.4, 0.6 })
        {
            foreach (double aside in new[] { 0, 0.1, 0.2, 0.3 })
            {
                double x = torso.Centre.X + (torso.SizeY / 2) + behind;
                double power = 0;
                foreach (double off in new[] { -0.06, -0.03, 0, 0.03, 0.06 })
                {
                    buffer.PieceCount = 0;
                    var ray = new Ray(new Point3(-100, 0, 0), new Point3(x, aside + off, 0), Frequency.WavelengthMetres);
                    BoxFront.GatherSolid(box, ray, Fold.None, 0, 0, mayHoldAnEnd: true, buffer);
                    double[] amplitudes = new double[buffer.PieceCount];
                    Array.Fill(amplitudes, 0.01);
                    power += FrontSum.PowerRatio(buffer.Pieces, amplitudes, FrontReach.Usual) / 5;
                }

                double series = SeriesDb(cylinder, x - torso.Centre.X, aside), here = 10 * Math.Log10(power);
                output.WriteLine(FormattableString.Invariant($"{behind} m behind, {aside} m aside: box {here:F1} dB, cylinder {series:F1} dB"));
                differences.Add(here - series);
            }
        }

        double rms = Math.Sqrt(differences.Average(d => d * d));
        output.WriteLine(FormattableString.Invariant($"rms {rms:F2} dB, mean {differences.Average():F2} dB"));
        Assert.InRange(rms, 0, ShadowDb);
    }

    private static double TorsoDb(ReferenceRow row, double distance, double angle)
    {
        ScatteredMeans torso = TorsoOf(row, distance);
        double step = angle / Math.PI * ScatteredMeans.Steps(distance);
        int low = Math.Min((int)step, ScatteredMeans.Steps(distance) - 1);
        double share = double.Lerp(torso.Share(low, FrontShares.OnlyTorso), torso.Share(low + 1, FrontShares.OnlyTorso), step - low);
        return 10 * Math.Log10(share);
    }

    private static ScatteredMeans TorsoOf(ReferenceRow row, double distance)
    {
        var permittivity = new Complex(
            row.Number("eps_r"),
            -row.Number("sigma_S_m") / (2 * Math.PI * Frequency.Hertz * ComplexPermittivity.VacuumFaradsPerMetre));
        var torso = new LossyCylinder(row.Number("radius_m"), permittivity, Frequency.WavelengthMetres, 0);
        return new ScatteredMeans(torso, torso, distance, Frequency.WavelengthMetres);
    }

    // The series itself over the lateral window, point by point.
    private static double SeriesDb(LossyCylinder cylinder, double x, double y)
    {
        double power = 0;
        foreach (double off in new[] { -0.06, -0.03, 0, 0.03, 0.06 })
        {
            var scattered = new Complex[ScatteredField.Components];
            var incident = new double[ScatteredField.Components];
            ScatteredField field = cylinder.At(double.Hypot(x, y + off));
            field.Sum(Math.Atan2(y + off, x), scattered);
            field.Incident(Math.Atan2(y + off, x), incident);
            power += scattered.Zip(incident, (s, i) => Power(s + i)).Sum() / 2 / 5;
        }

        return 10 * Math.Log10(power);
    }

    private static double Db(BodyShadow body, double turnDegrees, double slope) => 10 * Math.Log10(body.Factor(From(turnDegrees, slope), default, 0));

    private static Point3 From(double turnDegrees, double slope)
    {
        double turn = double.DegreesToRadians(turnDegrees), plan = 6 * Math.Cos(slope);
        return new Point3(plan * Math.Cos(turn), plan * Math.Sin(turn), 6 * Math.Sin(slope));
    }

    private static double Power(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);
}
