using System.Numerics;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Tests.Judges;

/// <summary>
/// The mean power of the wave that passes over a slab and the one that it reflects, their fields added. Both polarisations, some
/// channels of the band, and a Gaussian window normal to the slab at both ends, by quadrature over places. Fields by image theory and the
/// slab formula of Recommendation ITU-R P.2040-3, section 2.2.2, as complex amplitudes with exact lengths and angles at every place. It
/// shares no code with the engine.
/// </summary>
internal static class TwoRayField
{
    private const double VacuumFaradsPerMetre = 8.8541878128e-12;

    // Places of the window at each end: steps of a quarter of its deviation, three and a half to either side.
    private const int Places = 14;

    /// <summary>Power over that of the straight line alone in free space, with d at the window's middle.</summary>
    /// <param name="wall">The slab, one homogeneous layer.</param>
    /// <param name="first">Height of one end over it, metres.</param>
    /// <param name="second">Height of the other.</param>
    /// <param name="alongMetres">Distance of the ends along it.</param>
    /// <param name="deviation">Standard deviation of the window by the height, metres.</param>
    internal static double PowerRatio(Material wall, double first, double second, double alongMetres, Func<double, double> deviation)
    {
        double sum = 0, weights = 0, straight = double.Hypot(alongMetres, first - second);
        Frequency[] channels = [.. Band.Bluetooth.Channels.Where((_, i) => i % 13 == 0)];
        for (int i = -Places; i <= Places; i++)
        {
            for (int j = -Places; j <= Places; j++)
            {
                double x = i / 4.0, y = j / 4.0, weight = Math.Exp(-((x * x) + (y * y)) / 2);
                double one = Math.Abs(first + (x * deviation(first))), other = Math.Abs(second + (y * deviation(second)));
                if (one < 1e-4 || other < 1e-4)
                {
                    continue; // in the wall itself
                }

                sum += weight * channels.Average(channel => PowerAt(wall, channel, one, other, alongMetres)) * straight * straight;
                weights += weight;
            }
        }

        return sum / weights;
    }

    private static double PowerAt(Material wall, Frequency channel, double one, double other, double alongMetres)
    {
        double k = 2 * Math.PI * channel.Hertz / 299_792_458, straight = double.Hypot(alongMetres, one - other);
        double reflected = double.Hypot(alongMetres, one + other), cosine = (one + other) / reflected;
        (Complex te, Complex tm) = Reflection(wall, channel, k, cosine);
        Complex direct = Complex.FromPolarCoordinates(1 / straight, -k * straight), image = Complex.FromPolarCoordinates(1 / reflected, -k * reflected);

        // Square to the plane of incidence the fields lie along each other; in it they are turned by the angle between the rays.
        double power = Square(direct + (te * image));
        double turned = Math.Cos(Math.PI - (2 * Math.Acos(cosine)));
        power += Square(direct) + Square(tm * image) + (2 * turned * (Complex.Conjugate(direct) * tm * image).Real);
        return power / 2;
    }

    private static (Complex Te, Complex Tm) Reflection(Material wall, Frequency channel, double k, double cosine)
    {
        Dielectric substance = wall.Dielectric!;
        double gigahertz = channel.Hertz / 1e9;
        var eta = new Complex(
            substance.A * Math.Pow(gigahertz, substance.B),
            -substance.C * Math.Pow(gigahertz, substance.D) / (2 * Math.PI * channel.Hertz * VacuumFaradsPerMetre));
        Complex s = Complex.Sqrt(eta - 1 + (cosine * cosine));
        Complex through = Complex.Exp(new Complex(0, -2) * k * wall.ThicknessMetres!.Value * s);
        return (Slab((cosine - s) / (cosine + s)), Slab(((eta * cosine) - s) / ((eta * cosine) + s)));

        Complex Slab(Complex face) => face * (1 - through) / (1 - (face * face * through));
    }

    private static double Square(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);
}
