using System.Numerics;

namespace LinkMargin.Engine.Propagation;

/// <summary>
/// A plane wave on an infinite circular cylinder of lossy material: the exact series. At right angles to the axis it is that of R. F.
/// Harrington, Time-Harmonic Electromagnetic Fields (1961), section 5-9; at other angles the same boundary condition is solved for
/// both field components along the axis at once, since each order couples them (J. R. Wait, Canadian Journal of Physics 33, 1955;
/// both from memory, the equations derived here).
/// <para>
/// Time goes as e^{+jωt}; the wave runs as e^{−j(λx + hz)} with λ = k·cos α across the axis and h = k·sin α along it; inside,
/// λ2² = εk² − h². Let E and G be the parts along z of the electric field and of η0 times the magnetic one. Of order n they are
/// pJ + AH and qJ + BH at the surface (Hankel functions of the second kind of u = λa outside; p and q of the incident wave) and
/// multiples of J(λ2·a) inside. E_φ = (−(jh/ρ)·∂E/∂φ + jk·∂G/∂ρ)/λ² and G_φ = (−(jh/ρ)·∂G/∂φ − jkε·∂E/∂ρ)/λ² are continuous. With
/// D = J′/J inside, δ = D·λ/λ2 and κ = (nh/ka)·(1/λ − λ/λ2²):
/// </para>
/// <para>
/// κ(pJ + AH) + j[qJ′ + BH′ − δ(qJ + BH)] = 0, κ(qJ + BH) − j[pJ′ + AH′ − εδ(pJ + AH)] = 0
/// </para>
/// <para>
/// and, with JH′ − J′H = −2j/πu, the coefficients below follow. Where κ is 0 they are a_n and b_n of the textbook.
/// </para>
/// </summary>
internal sealed class LossyCylinder
{
    /// <summary>The highest order that is ever needed for a cylinder of a person's size; more add nothing but rounding.</summary>
    internal const int GreatestOrder = 30;

    private readonly double wavenumber; // k, radians per metre
    private readonly double across; // λ
    private readonly double along; // h
    private readonly Complex[] electric; // a_n: E scattered for E incident
    private readonly Complex[] magnetic; // b_n: G for G
    private readonly Complex[] crossed; // c_n: E for G, and −c_n G for E

    /// <summary>Solves the boundary condition order by order.</summary>
    /// <param name="radiusMetres">a, metres.</param>
    /// <param name="permittivity">ε, relative, its imaginary part below 0.</param>
    /// <param name="wavelengthMetres">In free space, metres.</param>
    /// <param name="slopeRadians">α, between the wave and the plane at right angles to the axis, 0 to below π/2.</param>
    internal LossyCylinder(double radiusMetres, Complex permittivity, double wavelengthMetres, double slopeRadians)
    {
        wavenumber = 2 * Math.PI / wavelengthMetres;
        (double sin, double cos) = Math.SinCos(slopeRadians);
        across = wavenumber * cos;
        along = wavenumber * sin;
        double u = across * radiusMetres;

        // Orders beyond u + 4·u^(1/3) + 2 contribute nothing (W. J. Wiscombe, Applied Optics 19, 1980; from memory).
        int orders = Math.Min(GreatestOrder, (int)(u + (4 * Math.Cbrt(u)) + 3)) + 1;
        electric = new Complex[orders];
        magnetic = new Complex[orders];
        crossed = new Complex[orders];
        Span<double> bessel = stackalloc double[orders + 1], neumann = stackalloc double[orders + 1];
        CylinderFunctions.BesselJy(u, bessel, neumann);
        Complex inside = Complex.Sqrt((permittivity * wavenumber * wavenumber) - (along * along)); // λ2
        Span<Complex> inner = stackalloc Complex[orders];
        CylinderFunctions.LogarithmicDerivatives(inside * radiusMetres, inner);
        for (int n = 0; n < orders; n++)
        {
            double j = bessel[n], dj = Derivative(bessel, n, u);
            var h = new Complex(j, -neumann[n]);
            var dh = new Complex(dj, -Derivative(neumann, n, u));
            Complex delta = across / inside * inner[n];
            Complex kappa = n * along / (wavenumber * radiusMetres) * ((1 / across) - (across / (inside * inside)));
            Complex magneticH = dh - (delta * h), magneticJ = dj - (delta * j);
            Complex electricH = dh - (permittivity * delta * h), electricJ = dj - (permittivity * delta * j);
            Complex both = kappa * kappa * h, determinant = (both * h) - (magneticH * electricH);
            electric[n] = ((magneticH * electricJ) - (both * j)) / determinant;
            magnetic[n] = ((electricH * magneticJ) - (both * j)) / determinant;
            crossed[n] = 2 * kappa / (Math.PI * u) / determinant;
        }
    }

    /// <summary>a_n, b_n and c_n, from order 0 on. a and b are the same for −n, c is the opposite.</summary>
    internal (IReadOnlyList<Complex> Electric, IReadOnlyList<Complex> Magnetic, IReadOnlyList<Complex> Crossed) Coefficients =>
        (electric, magnetic, crossed);

    /// <summary>
    /// Share it absorbs of the power that strikes its width, for a wave at right angles to its axis, mean of both polarisations:
    /// Q = −(2/u)·Re Σa − (2/u)·Σ|a|², the sums over all orders of both signs.
    /// </summary>
    internal static double AbsorbedShare(double radiusMetres, Complex permittivity, double wavelengthMetres)
    {
        var cylinder = new LossyCylinder(radiusMetres, permittivity, wavelengthMetres, 0);
        double Taken(IEnumerable<Complex> orders) => orders.Select((a, n) => (n == 0 ? 1 : 2) * (a.Real + (a.Real * a.Real) + (a.Imaginary * a.Imaginary))).Sum();
        return -(Taken(cylinder.electric) + Taken(cylinder.magnetic)) / (cylinder.across * radiusMetres);
    }

    /// <summary>The scattered field on a circle about the axis, ready to be summed at any angle.</summary>
    /// <param name="distanceMetres">ρ, from the axis, at least the radius, metres.</param>
    internal ScatteredField At(double distanceMetres)
    {
        int orders = electric.Length;
        var sums = new Complex[ScatteredField.Components * orders];
        double x = across * distanceMetres;
        Span<double> bessel = stackalloc double[orders + 1], neumann = stackalloc double[orders + 1];
        CylinderFunctions.BesselJy(x, bessel, neumann);
        Complex turn = 1; // j^−n
        double cos = across / wavenumber;
        for (int n = 0; n < orders; n++)
        {
            // Orders n and −n together: cos nφ for what is even, j·sin nφ for what is odd.
            Complex both = n == 0 ? 1 : 2 * turn;
            Complex h = both * new Complex(bessel[n], -neumann[n]);
            Complex dh = both * new Complex(Derivative(bessel, n, x), -Derivative(neumann, n, x));
            Complex a = electric[n], b = magnetic[n], c = crossed[n], j = Complex.ImaginaryOne;
            double sideways = along * n / (wavenumber * x), round = n / x, slant = along / wavenumber;
            Span<Complex> of = sums.AsSpan(ScatteredField.Components * n, ScatteredField.Components);

            // E_ρ = (−jh·∂E/∂ρ − (jk/ρ)·∂G/∂φ)/λ² and E_φ as in the summary, for E = cos α and for G = cos α incident.
            of[0] = (-j * slant * a * dh) - (round * c * h);
            of[1] = (j * sideways * a * h) + (c * dh);
            of[2] = cos * a * h;
            of[3] = (slant * c * dh) + (j * round * b * h);
            of[4] = (sideways * c * h) + (j * b * dh);
            of[5] = j * cos * c * h;
            turn *= -j;
        }

        return new ScatteredField(across * distanceMetres, along / wavenumber, cos, sums);
    }

    private static double Derivative(ReadOnlySpan<double> orders, int n, double x) => (n / x * orders[n]) - orders[n + 1];
}

/// <summary>The field that a cylinder scatters to a circle about its axis.</summary>
/// <param name="phase">λρ.</param>
/// <param name="sin">sin α.</param>
/// <param name="cos">cos α.</param>
/// <param name="sums">What each order adds to each component.</param>
internal sealed class ScatteredField(double phase, double sin, double cos, Complex[] sums)
{
    /// <summary>Radial, tangential and axial component for E along the axis, then for H along it.</summary>
    internal const int Components = 6;

    /// <summary>
    /// The components at an angle from the direction of the wave (0 is right behind the cylinder), for an incident wave of amplitude 1
    /// and phase 0 at that point.
    /// </summary>
    internal void Sum(double angleRadians, Span<Complex> scattered)
    {
        scattered[..Components].Clear();
        (double sinStep, double cosStep) = Math.SinCos(angleRadians);
        double s = 0, c = 1;
        for (int i = 0; i < sums.Length; i += Components)
        {
            scattered[0] += c * sums[i];
            scattered[1] += s * sums[i + 1];
            scattered[2] += c * sums[i + 2];
            scattered[3] += s * sums[i + 3];
            scattered[4] += c * sums[i + 4];
            scattered[5] += s * sums[i + 5];
            (s, c) = ((s * cosStep) + (c * sinStep), (c * cosStep) - (s * sinStep));
        }

        var own = Complex.FromPolarCoordinates(1, phase * cosStep);
        for (int i = 0; i < Components; i++)
        {
            scattered[i] *= own;
        }
    }

    /// <summary>The components of the incident wave there.</summary>
    internal void Incident(double angleRadians, Span<double> incident)
    {
        (double sinTurn, double cosTurn) = Math.SinCos(angleRadians);
        incident[0] = -sin * cosTurn;
        incident[1] = sin * sinTurn;
        incident[2] = cos;
        incident[3] = sinTurn;
        incident[4] = cosTurn;
        incident[5] = 0;
    }
}
