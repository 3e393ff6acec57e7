namespace LinkMargin.Engine.Quantities;

/// <summary>A frequency above zero, held in hertz; formulas take the unit they need.</summary>
public readonly record struct Frequency
{
    /// <summary>Speed of light in vacuum, m/s; exact by the definition of the metre (SI, 2019).</summary>
    public const double SpeedOfLight = 299_792_458.0;

    private Frequency(double hertz)
    {
        if (!(hertz > 0) || double.IsInfinity(hertz))
        {
            throw new ArgumentOutOfRangeException(nameof(hertz), hertz, "A frequency must be finite and above 0 Hz.");
        }

        Hertz = hertz;
    }

    /// <summary>Hz.</summary>
    public double Hertz { get; }

    /// <summary>MHz.</summary>
    public double Megahertz => Hertz / 1e6;

    /// <summary>GHz.</summary>
    public double Gigahertz => Hertz / 1e9;

    /// <summary>Wavelength in vacuum, metres.</summary>
    public double WavelengthMetres => SpeedOfLight / Hertz;

    /// <summary>From MHz.</summary>
    public static Frequency FromMegahertz(double megahertz) => new(megahertz * 1e6);
}
