using System.Numerics;
using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace LinkMargin.Engine.Tests.Judges;

/// <summary>
/// One order of a plane wave on an endless lossy cylinder by brute force: four unknowns (scattered and inner E and H along the axis) in
/// the four equations that tangential fields are continuous, with a library's Bessel functions of complex argument.
/// </summary>
internal static class CylinderBoundary
{
    /// <summary>Amplitudes of the scattered E and η0·H for incident ones of p and q.</summary>
    internal static (Complex Electric, Complex Magnetic) Scattered(
        int n, double radius, Complex permittivity, double k, double slope, Complex p, Complex q)
    {
        double outer = k * Math.Cos(slope), h = k * Math.Sin(slope);
        Complex inner = Complex.Sqrt((permittivity * k * k) - (h * h)), j = Complex.ImaginaryOne;
        double u = outer * radius;
        Complex v = inner * radius;
        Complex jn = SpecialFunctions.BesselJ(n, u), djn = (SpecialFunctions.BesselJ(n - 1, u) - SpecialFunctions.BesselJ(n + 1, u)) / 2;
        Complex hn = Hankel(n, u), dhn = (Hankel(n - 1, u) - Hankel(n + 1, u)) / 2;

        // Scaled as the library scales: only ratios of the inner functions matter.
        Complex jv = SpecialFunctions.BesselJScaled(n, v);
        Complex djv = (SpecialFunctions.BesselJScaled(n - 1, v) - SpecialFunctions.BesselJScaled(n + 1, v)) / 2;

        // E_φ = (nh/ρ·E + jk·∂G/∂ρ)/λ² and G_φ = (nh/ρ·G − jkε·∂E/∂ρ)/λ² for e^{jnφ}. Unknowns: A, B outside, C, D inside.
        Complex outside = n * h / radius / (outer * outer), within = n * h / radius / (inner * inner);
        Matrix<Complex> matrix = Matrix<Complex>.Build.DenseOfArray(new[,]
        {
            { hn, 0, -jv, 0 },
            { 0, hn, 0, -jv },
            { outside * hn, j * k / outer * dhn, -within * jv, -j * k / inner * djv },
            { -j * k / outer * dhn, outside * hn, j * k * permittivity / inner * djv, -within * jv },
        });
        MathNet.Numerics.LinearAlgebra.Vector<Complex> solved = matrix.Solve(MathNet.Numerics.LinearAlgebra.Vector<Complex>.Build.DenseOfArray(
        [
            -p * jn, -q * jn, -(outside * p * jn) - (j * k / outer * q * djn), -(outside * q * jn) + (j * k / outer * p * djn),
        ]));
        return (solved[0], solved[1]);
    }

    // H of the second kind; the library's Y of negative order by Y_−n = (−1)^n·Y_n.
    private static Complex Hankel(int n, double x)
    {
        int order = Math.Abs(n);
        var h = new Complex(SpecialFunctions.BesselJ(order, x), -SpecialFunctions.BesselY(order, x));
        return n < 0 && (order & 1) == 1 ? -h : h;
    }
}
