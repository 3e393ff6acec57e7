using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Propagation;

/// <summary>
/// Basic transmission loss in free space between isotropic antennas: Recommendation ITU-R P.525-4 (08/2019), "Calculation
/// of free-space attenuation", equation (3) (edition and number from memory), in its exact form; the constant 32.4 of the
/// practical form is rounded and reads 0.048 dB low.
/// </summary>
public static class FreeSpaceLoss
{
    /// <summary>Loss over a distance at one frequency.</summary>
    /// <param name="distanceMetres">d, metres, 0 or more.</param>
    /// <param name="frequency">f.</param>
    /// <returns>
    /// Lbf in dB, 0 or more. Closer than λ/4π (about 10 mm at 2.4 GHz) the formula would give a gain, so the loss is held at
    /// 0 dB there. It is then defined even with both ends in one place.
    /// </returns>
    public static double Db(double distanceMetres, Frequency frequency)
    {
        if (!(distanceMetres >= 0) || double.IsInfinity(distanceMetres))
        {
            throw new ArgumentOutOfRangeException(
                nameof(distanceMetres), distanceMetres, "A distance must be finite and 0 m or more.");
        }

        // P.525-4 eq. (3): Lbf = 20 log10(4πd/λ)
        double turns = Turns(distanceMetres, frequency.WavelengthMetres);
        return turns <= 1 ? 0 : 20 * Math.Log10(turns);
    }

    /// <summary>The caution to show where the loss is held at 0 dB; null where the formula holds.</summary>
    /// <param name="distanceMetres">d, metres, 0 or more.</param>
    /// <param name="frequency">f.</param>
    public static string? CautionAt(double distanceMetres, Frequency frequency) =>
        Turns(distanceMetres, frequency.WavelengthMetres) <= 1
            ? "the console and the hands are at the same place, too close for the free-space formula; its loss is taken as 0 dB"
            : null;

    /// <summary>The same as a share of the transmitted power, for a distance and a wavelength that have been checked.</summary>
    /// <param name="distanceMetres">d, metres.</param>
    /// <param name="wavelengthMetres">λ, metres.</param>
    internal static double PowerRatio(double distanceMetres, double wavelengthMetres)
    {
        double turns = Turns(distanceMetres, wavelengthMetres);
        return turns <= 1 ? 1 : 1 / (turns * turns);
    }

    private static double Turns(double distanceMetres, double wavelengthMetres) => 4 * Math.PI * distanceMetres / wavelengthMetres;
}
