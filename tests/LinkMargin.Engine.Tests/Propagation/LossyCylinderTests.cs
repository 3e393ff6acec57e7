using System.Numerics;
using CsCheck;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Tests.Judges;
using MathNet.Numerics;

namespace LinkMargin.Engine.Tests.Propagation;

/// <summary>The exact series of a lossy cylinder against computed values, a judge and the laws of energy.</summary>
public sealed class LossyCylinderTests
{
    private static readonly Frequency Frequency = Frequency.FromMegahertz(2440);
    private static readonly Complex BodyLiquid = Permittivity(52.7, 1.95);

    // Values to 12 digits of a code of 40 digits (formulas: Harrington 1961, p. 232 ff.).
    [Fact]
    public void Coefficients_are_those_of_the_published_series()
    {
        var cylinder = new LossyCylinder(0.15, BodyLiquid, Frequency.WavelengthMetres, 0);
        AssertNear(new Complex(-0.660906651403, -0.345984719602), cylinder.Coefficients.Electric[0], 1e-11);
        AssertNear(new Complex(-0.384917649315, 0.364699439356), cylinder.Coefficients.Magnetic[0], 1e-11);
        AssertNear(new Complex(-0.384917649315, 0.364699439356), cylinder.Coefficients.Electric[1], 1e-11);
        AssertNear(new Complex(-0.565790357484, -0.375874663671), cylinder.Coefficients.Magnetic[1], 1e-11);
        Assert.All(cylinder.Coefficients.Crossed, c => Assert.Equal(Complex.Zero, c));
    }

    [Fact]
    public void Levels_beside_and_behind_are_those_of_the_series_in_many_digits()
    {
        foreach (ReferenceRow row in ReferenceTable.Read("cylinder-series.csv").Rows)
        {
            double x = row.Number("x_m"), y = row.Number("y_m");
            (double electric, double magnetic) = Powers(CylinderOf(row), double.Hypot(x, y), Math.Atan2(y, x));
            row.AssertPrinted("tm_db", 10 * Math.Log10(electric));
            row.AssertPrinted("te_db", 10 * Math.Log10(magnetic));
        }
    }

    [Fact]
    public void The_mean_over_all_azimuths_is_that_in_closed_form()
    {
        foreach (ReferenceRow row in ReferenceTable.Read("cylinder-azimuth-mean.csv").Rows)
        {
            const int Angles = 90; // more than twice the highest order: the mean of a periodic function is exact
            (double Electric, double Magnetic)[] all = [.. Enumerable.Range(0, Angles).Select(i =>
                Powers(CylinderOf(row), row.Number("radius_m") + row.Number("d_m"), 2 * Math.PI * i / Angles))];
            row.AssertPrinted("tm_db", 10 * Math.Log10(all.Average(p => p.Electric)));
            row.AssertPrinted("te_db", 10 * Math.Log10(all.Average(p => p.Magnetic)));
        }
    }

    [Fact, Law]
    public void Aslant_every_order_keeps_the_fields_continuous() =>
        Gen.Select(Gen.Double[0.05, 0.2], Gen.Double[0, 85], Gen.Double[3, 80], Gen.Double[0.1, 3], Gen.Int[0, 8]).ForAll(
            (radius, slopeDegrees, relative, conductivity, n) =>
            {
                double slope = double.DegreesToRadians(slopeDegrees), k = 2 * Math.PI / Frequency.WavelengthMetres;
                Complex permittivity = Permittivity(relative, conductivity);
                var cylinder = new LossyCylinder(radius, permittivity, Frequency.WavelengthMetres, slope);
                if (n >= cylinder.Coefficients.Electric.Count)
                {
                    return;
                }

                (Complex a, Complex minusC) = CylinderBoundary.Scattered(n, radius, permittivity, k, slope, 1, 0);
                (Complex c, Complex b) = CylinderBoundary.Scattered(n, radius, permittivity, k, slope, 0, 1);
                AssertNear(a, cylinder.Coefficients.Electric[n], 1e-8);
                AssertNear(b, cylinder.Coefficients.Magnetic[n], 1e-8);
                AssertNear(c, cylinder.Coefficients.Crossed[n], 1e-8);
                AssertNear(-minusC, cylinder.Coefficients.Crossed[n], 1e-8);
            },
            cases: 200);

    [Fact, Law]
    public void Without_loss_all_that_is_taken_is_scattered() =>
        Gen.Select(Gen.Double[0.05, 0.2], Gen.Double[0, 80], Gen.Double[2, 60]).ForAll(
            (radius, slopeDegrees, relative) =>
            {
                var cylinder = new LossyCylinder(radius, relative, Frequency.WavelengthMetres, double.DegreesToRadians(slopeDegrees));
                (IReadOnlyList<Complex> a, IReadOnlyList<Complex> b, IReadOnlyList<Complex> c) = cylinder.Coefficients;
                for (int n = 0; n < a.Count; n++)
                {
                    Assert.Equal(-a[n].Real, Square(a[n]) + Square(c[n]), 1e-8);
                    Assert.Equal(-b[n].Real, Square(b[n]) + Square(c[n]), 1e-8);
                }
            },
            cases: 100);

    // 0.389 (E along the axis) and 0.598, of the same series in many digits.
    [Fact]
    public void A_torso_absorbs_half_of_what_strikes_it() =>
        Assert.Equal((0.389 + 0.598) / 2, LossyCylinder.AbsorbedShare(0.15, BodyLiquid, Frequency.WavelengthMetres), 1e-3);

    [Fact, Law]
    public void Bessel_functions_are_the_librarys() =>
        Gen.Select(Gen.Double[0.1, 20], Gen.Double[0.1, 60], Gen.Double[-20, -0.5]).ForAll(
            (x, real, imaginary) =>
            {
                const int Orders = 12;
                double[] j = new double[Orders], y = new double[Orders];
                var ratios = new Complex[Orders];
                var z = new Complex(real, imaginary);
                CylinderFunctions.BesselJy(x, j, y);
                CylinderFunctions.LogarithmicDerivatives(z, ratios);
                for (int n = 0; n < Orders; n++)
                {
                    double expected = SpecialFunctions.BesselY(n, x);
                    Assert.Equal(SpecialFunctions.BesselJ(n, x), j[n], 1e-10);
                    Assert.Equal(expected, y[n], 1e-10 * Math.Max(1, Math.Abs(expected)));
                    Complex above = SpecialFunctions.BesselJScaled(n + 1, z), here = SpecialFunctions.BesselJScaled(n, z);
                    AssertNear((n / z) - (above / here), ratios[n], 1e-8);
                }
            },
            cases: 200);

    /// <summary>Powers over those of the incident wave for E along the axis and for H along it.</summary>
    private static (double Electric, double Magnetic) Powers(LossyCylinder cylinder, double distance, double angle)
    {
        var scattered = new Complex[ScatteredField.Components];
        var incident = new double[ScatteredField.Components];
        ScatteredField field = cylinder.At(distance);
        field.Sum(angle, scattered);
        field.Incident(angle, incident);
        double[] powers = [.. scattered.Zip(incident, (s, i) => Square(s + i))];
        return (powers[0] + powers[1] + powers[2], powers[3] + powers[4] + powers[5]);
    }

    private static LossyCylinder CylinderOf(ReferenceRow row) =>
        new(row.Number("radius_m"), Permittivity(row.Number("eps_r"), row.Number("sigma_S_m")), Frequency.WavelengthMetres, 0);

    private static Complex Permittivity(double relative, double conductivity) =>
        new(relative, -conductivity / (2 * Math.PI * Frequency.Hertz * ComplexPermittivity.VacuumFaradsPerMetre));

    private static double Square(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);

    private static void AssertNear(Complex expected, Complex actual, double tolerance) =>
        Assert.True(Complex.Abs(expected - actual) <= tolerance, $"expected {expected}, computed {actual}");
}
