namespace LinkMargin.Engine.Propagation;

/// <summary>
/// Fresnel ellipsoids of a path. Recommendation ITU-R P.526-16 (11/2025), section 2, Fresnel ellipsoids and Fresnel zones.
/// </summary>
public static class FresnelZone
{
    /// <summary>
    /// Radius of the first Fresnel ellipsoid at a point of the path: the disc about the line through which most of the
    /// energy goes.
    /// </summary>
    /// <param name="wavelengthMetres">λ, wavelength, metres, above 0.</param>
    /// <param name="firstMetres">d1, distance from one end to the point, metres, 0 or more.</param>
    /// <param name="secondMetres">d2, distance from the point to the other end, metres, 0 or more.</param>
    /// <returns>R1, metres; 0 at either end, and 0 for a path of no length.</returns>
    public static double FirstRadiusMetres(double wavelengthMetres, double firstMetres, double secondMetres)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(wavelengthMetres);
        ArgumentOutOfRangeException.ThrowIfNegative(firstMetres);
        ArgumentOutOfRangeException.ThrowIfNegative(secondMetres);
        double total = firstMetres + secondMetres;

        // Section 2, Rn = √(n·λ·d1·d2/(d1 + d2)) with n = 1, in consistent units; equation (2), number from memory.
        return total > 0 ? Math.Sqrt(wavelengthMetres * firstMetres / total * secondMetres) : 0;
    }
}
