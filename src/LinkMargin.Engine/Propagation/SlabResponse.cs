using System.Numerics;

namespace LinkMargin.Engine.Propagation;

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

    /// <summary>|R|², share of the power thrown back, 0 to 1.</summary>
    public double Reflectance => SquaredMagnitude(Reflection);

    /// <summary>1 − |R|² − |T|², share of the power turned to heat in the slab.</summary>
    public double Absorptance => 1 - Transmittance - Reflectance;

    /// <summary>−20·lg|T|, dB, never more than <see cref="LayeredSlab.GreatestLossDb"/>.</summary>
    public double LossDb => LayeredSlab.LossDbOf(Transmittance);

    private static double SquaredMagnitude(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);
}
