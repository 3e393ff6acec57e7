using System.Numerics;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Materials;

/// <summary>
/// Complex relative permittivity of building materials. Recommendation ITU-R P.2040-3 (08/2023), Annex 1, section 3,
/// Compilations of electrical properties of materials, model of Table 3; time goes as e^{+jωt}, so losses show as a
/// negative imaginary part.
/// </summary>
public static class ComplexPermittivity
{
    /// <summary>ε0, permittivity of vacuum, F/m (CODATA 2018).</summary>
    public const double VacuumFaradsPerMetre = 8.8541878128e-12;

    /// <summary>
    /// Lowest frequency at which Table 3's common building materials were measured, GHz. Some rows reach lower; floorboard, at
    /// 50 GHz to 100 GHz, does not cover this range and is best replaced by wood or chipboard. Every channel of
    /// <see cref="Band.Bluetooth"/>, the only band there is, lies inside, so no result needs a caution.
    /// </summary>
    public const double LeastGigahertz = 1;

    /// <summary>Highest frequency of the narrowest such row (brick in edition 1), GHz.</summary>
    public const double GreatestGigahertz = 10;

    /// <summary>Air and vacuum: η = 1.</summary>
    public static readonly Complex Air = Complex.One;

    /// <summary>η = ε' − jε''.</summary>
    /// <param name="substance">a, b, c and d of the material's row; null is air.</param>
    /// <param name="frequency">f, from <see cref="LeastGigahertz"/> to <see cref="GreatestGigahertz"/>.</param>
    /// <returns>The relative permittivity, no unit: real part 1 or more, imaginary part 0 or less.</returns>
    public static Complex Of(Dielectric? substance, Frequency frequency)
    {
        if (substance is null)
        {
            return Air;
        }

        // Section 3; numbered (57) to (59) in edition 4, from memory unnumbered here.
        double relative = substance.A * Math.Pow(frequency.Gigahertz, substance.B); // ε' = a·f^b
        double conductivity = ConductivitySiemensPerMetre(substance, frequency);
        if (!(relative >= 1) || !(conductivity >= 0) || double.IsInfinity(relative) || double.IsInfinity(conductivity))
        {
            throw new ArgumentOutOfRangeException(
                nameof(substance),
                substance,
                "A relative permittivity must be finite and 1 or more, a conductivity finite and 0 or more.");
        }

        // ε'' = σ/(2π·f·ε0); the text rounds this to 17.98·σ/f with f in GHz, 0.03 % more.
        return new Complex(relative, -conductivity / (2 * Math.PI * frequency.Hertz * VacuumFaradsPerMetre));
    }

    /// <summary>σ = c·f^d, conductivity, S/m, f in GHz; 0 for air.</summary>
    /// <param name="substance">a, b, c and d of the material's row; null is air.</param>
    /// <param name="frequency">f.</param>
    public static double ConductivitySiemensPerMetre(Dielectric? substance, Frequency frequency) =>
        substance is null ? 0 : substance.C * Math.Pow(frequency.Gigahertz, substance.D);
}
