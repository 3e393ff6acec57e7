using System.Numerics;
using LinkMargin.Engine.Quantities;
using Rectangle = LinkMargin.Engine.Tests.Judges.ApertureIntegral.Rectangle;

namespace LinkMargin.Engine.Tests.Judges;

/// <summary>The judge itself, against published values and closed forms.</summary>
public sealed class ApertureIntegralTests
{
    private const double Everywhere = double.PositiveInfinity;

    [Fact]
    public void Gives_the_published_Fresnel_integrals() =>
        Assert.All(ReferenceTable.Read("fresnel-integrals.csv").Rows, row =>
        {
            // ∫ from 0 to v is C − jS.
            Complex value = ApertureIntegral.Between(0, row.Number("v")) / new Complex(0.5, 0.5);
            if (row.Text("source") == "mpmath")
            {
                Assert.Equal(row.Number("c"), value.Real, 1e-12);
                Assert.Equal(row.Number("s"), -value.Imaginary, 1e-12);
                return;
            }

            row.AssertPrinted("c", value.Real);
            if (row.Has("s"))
            {
                row.AssertPrinted("s", -value.Imaginary);
            }
        });

    [Fact]
    public void Both_paths_of_integration_give_the_same()
    {
        var random = new Random(13_01);
        for (int i = 0; i < 100; i++)
        {
            double from = (24 * random.NextDouble()) - 12, to = (24 * random.NextDouble()) - 12;
            (from, to) = (Math.Min(from, to), Math.Max(from, to));
            Complex turned = ApertureIntegral.Between(from, to), straight = ApertureIntegral.StraightBetween(from, to);
            Assert.True((turned - straight).Magnitude < 1e-11, $"{from} to {to}: {turned}, {straight}");
        }
    }

    [Fact]
    public void Two_half_planes_give_the_published_double_integral() =>
        Assert.All(ReferenceTable.Read("two-knife-edges.csv").Rows, row =>
        {
            double first = row.Number("first_m"), between = row.Number("between_m"), last = row.Number("last_m");
            double wavelength = Frequency.FromMegahertz(2440).WavelengthMetres;
            double v1 = row.Number("first_height_m") * Math.Sqrt(2 / wavelength * ((1 / first) + (1 / (between + last))));
            double v2 = row.Number("second_height_m") * Math.Sqrt(2 / wavelength * ((1 / (first + between)) + (1 / last)));
            double rho = Math.Sqrt(first * last / ((first + between) * (between + last)));
            double power = ApertureIntegral.MeanPowerOfTwo([Below(v1)], [Below(v2)], rho);
            row.AssertPrinted("exact_db", -10 * Math.Log10(power));
        });

    [Fact]
    public void What_a_strip_takes_over_all_places_is_what_strikes_it()
    {
        // Parseval: no power is lost on the way, so over all places a strip of width w takes w·(1 − a²). Places from −12 to 12
        // leave the tails of the edges' waves, 2/(π²·12) of power at most, out.
        const double Step = 0.05, Width = 1.5, Amplitude = 0.4;
        double taken = 0;
        for (double at = -12; at <= 12; at += Step)
        {
            taken += Step * (1 - ApertureIntegral.MeanPower(
                [new Rectangle(at - (Width / 2), at + (Width / 2), -Everywhere, Everywhere, Amplitude)]));
        }

        Assert.Equal(Width * (1 - (Amplitude * Amplitude)), taken, 2 / (Math.PI * Math.PI * 12));
    }

    private static Rectangle Below(double v) => new(-Everywhere, v, -Everywhere, Everywhere, 0);
}
