using System.Numerics;

namespace LinkMargin.Engine.Materials;

/// <summary>
/// Transmission and reflection of a plane wave by parallel layers. Recommendation ITU-R P.2040-3 (08/2023), Annex 1,
/// section 2.2.2, a slab of one or several layers. The published recursion (section 2.2.2.1) grows with e^{+δ} and leaves
/// the range of a double inside metal; here the same boundary conditions are solved from the exit face to the entry face
/// in terms of the admittance looking into what lies behind, so that every exponential shrinks, nothing can overflow and no
/// digits cancel at grazing. With y the wave's own admittance (s for TE, s/η for TM, in units of that of air at normal
/// incidence), Y' that of everything behind a layer and E = e^{−2δ}:
/// <code>
/// Y = y·((1 + E)·Y' + (1 − E)·y) / ((1 + E)·y + (1 − E)·Y')        looking into the layer's front
/// field at its back / field at its front = 2·e^{−δ}·y / ((1 + E)·y + (1 − E)·Y')
/// R = (y0 − Y)/(y0 + Y),  T = 2·y0/(y0 + Y)·(product of the ratios)
/// </code>
/// which follow from the tangential fields cosh δ, sinh δ of a layer (the Recommendation's chain-matrix route, Attachment 1
/// to Annex 1 of edition 4) divided by e^{+δ}.
/// </summary>
public static class LayeredSlab
{
    /// <summary>
    /// Greatest loss that is ever returned, dB. A closed metal sheet is far above it on paper (thousands of dB); nothing
    /// built is, since seams and edges leak long before. So the number only has to be finite and high enough to be opaque.
    /// </summary>
    public const double GreatestLossDb = 200;

    /// <summary>
    /// Smallest cosine of incidence used; a flatter wave is treated as one at this angle, 0.0000573° from grazing.
    /// At grazing itself the coefficients of a cavity wall are 0/0; the limit of T is 0 and of |R| is 1.
    /// </summary>
    public const double LeastCosine = 1e-6;

    /// <summary>Response of a slab that stands in air.</summary>
    /// <param name="layers">Layers in the order that the wave meets them; without any it is air.</param>
    /// <param name="wavelengthMetres">λ, wavelength in vacuum, metres, above 0.</param>
    /// <param name="cosIncidence">cos θ, cosine of the angle to the normal, 0 to 1.</param>
    /// <param name="polarisation">TE or TM.</param>
    public static SlabResponse Solve(
        ReadOnlySpan<SlabLayer> layers, double wavelengthMetres, double cosIncidence, Polarisation polarisation) =>
        Solve(layers, wavelengthMetres, cosIncidence, polarisation, ComplexPermittivity.Air);

    /// <summary>Response of layers in front of a half space.</summary>
    /// <param name="layers">Layers in the order that the wave meets them; without any it is the bare half space.</param>
    /// <param name="wavelengthMetres">λ, wavelength in vacuum, metres, above 0.</param>
    /// <param name="cosIncidence">cos θ, cosine of the angle to the normal, 0 to 1.</param>
    /// <param name="polarisation">TE or TM.</param>
    /// <param name="exitPermittivity">η of what fills the space behind; 1 for air.</param>
    public static SlabResponse Solve(
        ReadOnlySpan<SlabLayer> layers,
        double wavelengthMetres,
        double cosIncidence,
        Polarisation polarisation,
        Complex exitPermittivity)
    {
        (SlabResponse te, SlabResponse tm) = SolveBoth(layers, wavelengthMetres, cosIncidence, exitPermittivity);
        return polarisation == Polarisation.TransverseElectric ? te : tm;
    }

    /// <summary>Both polarisations at once, for half the work.</summary>
    /// <param name="layers">Layers in the order that the wave meets them.</param>
    /// <param name="wavelengthMetres">λ, wavelength in vacuum, metres, above 0.</param>
    /// <param name="cosIncidence">cos θ, cosine of the angle to the normal, 0 to 1.</param>
    /// <param name="exitPermittivity">η of what fills the space behind; 1 for air.</param>
    /// <returns>TE, then TM.</returns>
    public static (SlabResponse Te, SlabResponse Tm) SolveBoth(
        ReadOnlySpan<SlabLayer> layers, double wavelengthMetres, double cosIncidence, Complex exitPermittivity)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(wavelengthMetres);
        ArgumentOutOfRangeException.ThrowIfNegative(cosIncidence);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(cosIncidence, 1);
        double cos = Math.Max(cosIncidence, LeastCosine);
        double waveNumber = 2 * Math.PI / wavelengthMetres; // k0

        // Nothing comes back from behind the last face, so the admittance there is that of the space itself.
        Complex exit = NormalComponent(exitPermittivity, cos);
        Complex seenTe = exit, seenTm = exit / exitPermittivity, passTe = Complex.One, passTm = Complex.One;
        for (int n = layers.Length - 1; n >= 0; n--)
        {
            SlabLayer layer = layers[n];
            Complex s = NormalComponent(layer.Permittivity, cos);
            Complex delta = new Complex(-s.Imaginary, s.Real) * (waveNumber * layer.ThicknessMetres); // δ = j·k0·s·d, Re δ ≥ 0
            (Complex once, Complex less) = Through(delta);
            Complex more = 2 - less; // 1 + E
            AddLayer(s, once, less, more, ref seenTe, ref passTe);
            AddLayer(s / layer.Permittivity, once, less, more, ref seenTm, ref passTm);
        }

        return (Response(seenTe, passTe, cos), Response(seenTm, passTm, cos));
    }

    /// <summary>A share of power as a loss, dB, never more than <see cref="GreatestLossDb"/>.</summary>
    /// <param name="transmittance">|T|², 0 or more.</param>
    internal static double LossDbOf(double transmittance) =>
        transmittance > 0 ? Math.Min(-10 * Math.Log10(transmittance), GreatestLossDb) : GreatestLossDb;

    /// <summary>
    /// √(η − sin²θ), the component of the wave number along the normal over k0. Written as √((η − 1) + cos²θ), which stays
    /// accurate in air at grazing. The root with Im ≤ 0 is the wave that decays. No digits cancel and nothing overflows where
    /// ε' is 1 or more, as in every building material (<see cref="ComplexPermittivity.Of"/>); below 1, ε'' must not be 0.
    /// </summary>
    private static Complex NormalComponent(Complex eta, double cos)
    {
        double real = eta.Real - 1 + (cos * cos);
        double root = Math.Sqrt((Math.Sqrt((real * real) + (eta.Imaginary * eta.Imaginary)) + real) / 2);
        return new Complex(root, eta.Imaginary / (2 * root));
    }

    /// <summary>
    /// e^{−δ} and 1 − e^{−2δ} of δ = a + jb, the latter as (1 − q) + 2·q·sin²b + j·2·q·sin b·cos b with q = e^{−2a}: no digits
    /// cancel in a thin layer.
    /// </summary>
    private static (Complex Once, Complex OneLessTwice) Through(Complex delta)
    {
        (double sin, double cos) = Math.SinCos(delta.Imaginary);
        double once = Math.Exp(-delta.Real), twice = once * once;
        double lost = delta.Real < 1 ? 2 * once * Math.Sinh(delta.Real) : 1 - twice;
        return (new(once * cos, -once * sin), new(lost + (2 * twice * sin * sin), 2 * twice * sin * cos));
    }

    /// <summary>Puts a layer in front of what is already known.</summary>
    private static void AddLayer(Complex y, Complex once, Complex less, Complex more, ref Complex seen, ref Complex pass)
    {
        Complex one = y / ((more * y) + (less * seen));
        pass *= 2 * once * one;
        seen = one * ((more * seen) + (less * y));
    }

    /// <summary>The face towards the air in front, where y0 = cos θ for either polarisation.</summary>
    private static SlabResponse Response(Complex seen, Complex pass, double cos) =>
        new(2 * cos * pass / (cos + seen), (cos - seen) / (cos + seen));
}

/// <summary>One homogeneous layer of a slab at one frequency.</summary>
/// <param name="Permittivity">η = ε' − jε'', relative; imaginary part 0 or less.</param>
/// <param name="ThicknessMetres">d, metres, 0 or more.</param>
public readonly record struct SlabLayer(Complex Permittivity, double ThicknessMetres);

/// <summary>What a slab in air does to a plane wave of one frequency, angle and polarisation.</summary>
/// <param name="Transmission">
/// T, complex amplitude behind the slab over that in front, each at its own face: of the electric field for TE, of the
/// magnetic field for TM. The two are the same in power where the slab stands in air.
/// </param>
/// <param name="Reflection">R, complex amplitude reflected over incident at the front face, of the same field.</param>
public readonly record struct SlabResponse(Complex Transmission, Complex Reflection)
{
    /// <summary>|T|², share of the power that passes, 0 to 1.</summary>
    public double Transmittance => SquaredMagnitude(Transmission);

    /// <summary>|R|², share of the power reflected, 0 to 1.</summary>
    public double Reflectance => SquaredMagnitude(Reflection);

    /// <summary>1 − |R|² − |T|², share of the power turned to heat in the slab.</summary>
    public double Absorptance => 1 - Transmittance - Reflectance;

    /// <summary>−20·lg|T|, dB, never more than <see cref="LayeredSlab.GreatestLossDb"/>.</summary>
    public double LossDb => LayeredSlab.LossDbOf(Transmittance);

    private static double SquaredMagnitude(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);
}
