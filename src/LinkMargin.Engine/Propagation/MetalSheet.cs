using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Propagation;

/// <summary>
/// What passes metal sheets: through their holes, through a wire mesh, and through the seams around a panel. The metal itself
/// passes nothing. Each loss is the mean of both polarisations; the material table holds the results for common dimensions.
/// </summary>
/// <remarks>
/// Holes: T. Y. Otoshi, "A study of microwave leakage through perforated flat plates", IEEE Trans. Microwave Theory and
/// Techniques, March 1972. Mesh: K. F. Casey, "Electromagnetic shielding behavior of wire-mesh screens", IEEE Trans.
/// Electromagnetic Compatibility, 1988. Both formulas are from memory and hold at normal incidence. Seams: Babinet's principle applied
/// to the thin wire of Harrington, "Time-Harmonic Electromagnetic Fields", 1961.
/// </remarks>
public static class MetalSheet
{
    /// <summary>
    /// Largest hole in wavelengths at which the formula was compared with a field computation: 20 mm at 2.44 GHz.
    /// </summary>
    public const double MostHoleWavelengths = 0.17;

    /// <summary>Largest share of open area at which the formula was compared with a field computation.</summary>
    public const double MostOpenShare = 0.65;

    /// <summary>
    /// Largest pitch of a mesh, in wavelengths: 30 mm at 2.44 GHz. The source requires a pitch far below a wavelength; how far is
    /// judgement.
    /// </summary>
    public const double MostMeshPitchWavelengths = 0.25;

    /// <summary>
    /// Widest seam, in wavelengths: 10 mm at 2.44 GHz. A slit is narrow while k·w is at most about a half, which is judgement.
    /// </summary>
    public const double MostSeamWidthWavelengths = 0.08;

    /// <summary>
    /// Shortest seam, in wavelengths, that counts as long. Seams near half a wavelength resonate and pass more, shorter ones far
    /// less; the limit is judgement.
    /// </summary>
    public const double LeastSeamLengthWavelengths = 1;

    // Cell of round holes, staggered so that they touch, as a share of the square of their diameter: √3/2.
    private const double ClosestCell = 0.86602540378443865;

    // Loss of the lowest mode of a round hole far below its cut-off, dB for each diameter of depth: 20·log10(e)·2·1.841.
    private const double CutOffDb = 32;

    // The exponential of Euler's constant.
    private const double ExpEuler = 1.7810724179901979;

    /// <summary>Area of sheet that belongs to one hole of a square pattern, m².</summary>
    /// <param name="pitchMetres">Distance between centres, metres.</param>
    public static double SquareCell(double pitchMetres) => pitchMetres * pitchMetres;

    /// <summary>Area of sheet that belongs to one hole of a staggered pattern (equilateral triangles), m².</summary>
    /// <param name="pitchMetres">Distance between centres, metres.</param>
    public static double StaggeredCell(double pitchMetres) => ClosestCell * pitchMetres * pitchMetres;

    /// <summary>Loss of a sheet with round holes, head on: Otoshi 1972.</summary>
    /// <param name="holeMetres">d, diameter of a hole, metres, above 0.</param>
    /// <param name="cellSquareMetres">P, area of sheet for each hole, m²; holes do not overlap.</param>
    /// <param name="thicknessMetres">t, metres, 0 or more.</param>
    /// <param name="frequency">f.</param>
    /// <returns>
    /// dB, above 0; within 1.1 dB of a field computation up to <see cref="MostHoleWavelengths"/> and <see cref="MostOpenShare"/>.
    /// </returns>
    public static double PerforatedLossDb(double holeMetres, double cellSquareMetres, double thicknessMetres, Frequency frequency)
    {
        Check(holeMetres, nameof(holeMetres));
        if (!(thicknessMetres >= 0) || double.IsInfinity(thicknessMetres))
        {
            throw new ArgumentOutOfRangeException(nameof(thicknessMetres), thicknessMetres, "A thickness must be finite and 0 m or more.");
        }

        // The last bits allow for rounding in a cell that was computed from a pitch.
        if (!(cellSquareMetres >= ClosestCell * holeMetres * holeMetres * (1 - 1e-12)) || double.IsInfinity(cellSquareMetres))
        {
            throw new ArgumentOutOfRangeException(nameof(cellSquareMetres), cellSquareMetres, "A cell must be finite and hold its hole without overlap.");
        }

        // loss = 10 log10[1 + ¼(3Pλ/(πd³))²] + 32 t/d
        double shunt = 3 * cellSquareMetres * frequency.WavelengthMetres / (Math.PI * holeMetres * holeMetres * holeMetres);
        return (10 * Math.Log10(1 + (0.25 * shunt * shunt))) + (CutOffDb * thicknessMetres / holeMetres);
    }

    /// <summary>The caution to show with the loss of a sheet with holes; null in the range of the comparison.</summary>
    /// <param name="holeMetres">d, diameter of a hole, metres, above 0.</param>
    /// <param name="cellSquareMetres">P, area of sheet for each hole, m².</param>
    /// <param name="frequency">f.</param>
    public static string? PerforatedCaution(double holeMetres, double cellSquareMetres, Frequency frequency) =>
        holeMetres > MostHoleWavelengths * frequency.WavelengthMetres
            ? "the holes are too large compared with the wavelength for the formula; the loss is a rough estimate"
            : Math.PI / 4 * holeMetres * holeMetres > MostOpenShare * cellSquareMetres
                ? "the sheet has more open area than the formula was verified for; the loss is a rough estimate"
                : null;

    /// <summary>Loss of a square mesh of round wires, bonded where they cross, head on: Casey 1988, wires that conduct without loss.</summary>
    /// <param name="pitchMetres">s, distance between the centres of wires, metres, above the wire's diameter.</param>
    /// <param name="wireRadiusMetres">a, radius of a wire (half its diameter), metres, above 0.</param>
    /// <param name="frequency">f.</param>
    /// <returns>dB, above 0; falls towards 0 as the pitch grows.</returns>
    public static double MeshLossDb(double pitchMetres, double wireRadiusMetres, Frequency frequency)
    {
        Check(wireRadiusMetres, nameof(wireRadiusMetres));
        if (!(pitchMetres > 2 * wireRadiusMetres) || double.IsInfinity(pitchMetres))
        {
            throw new ArgumentOutOfRangeException(nameof(pitchMetres), pitchMetres, "A pitch must be finite and above the diameter of the wire.");
        }

        // X/η = (s/λ) ln[1/(1 − exp(−2πa/s))]; T = 2jX/(2jX + η)
        double reactance = -pitchMetres / frequency.WavelengthMetres * Math.Log(1 - Math.Exp(-2 * Math.PI * wireRadiusMetres / pitchMetres));
        double square = 4 * reactance * reactance;
        return 10 * Math.Log10((1 + square) / square);
    }

    /// <summary>The caution to show with the loss of a mesh; null where its pitch is small against the wavelength.</summary>
    /// <param name="pitchMetres">s, distance between the centres of wires, metres.</param>
    /// <param name="frequency">f.</param>
    public static string? MeshCaution(double pitchMetres, Frequency frequency) =>
        pitchMetres > MostMeshPitchWavelengths * frequency.WavelengthMetres
            ? "the mesh is too wide compared with the wavelength for the formula; the loss is a rough estimate"
            : null;

    /// <summary>
    /// Width of the strip of a wave that passes a long slit in a thin sheet with the electric field across the slit; the same for
    /// every direction around the slit. With the field along the slit almost nothing passes.
    /// </summary>
    /// <param name="widthMetres">w, width of the slit, metres, above 0.</param>
    /// <param name="frequency">f.</param>
    /// <returns>
    /// W, metres: by Babinet's principle half the scattering width of a strip w wide, which acts as a wire of radius w/4. For a
    /// narrow slit it is wider than the slit.
    /// </returns>
    public static double SlitWidthMetres(double widthMetres, Frequency frequency)
    {
        Check(widthMetres, nameof(widthMetres));
        double k = 2 * Math.PI / frequency.WavelengthMetres;

        // W = (2/k)/[1 + (4/π²) ln²(γkw/8)], γ = 1.781
        double turns = 2 / Math.PI * Math.Log(ExpEuler * k * widthMetres / 8);
        return 2 / k / (1 + (turns * turns));
    }

    /// <summary>The caution to show with a seam; null where it is narrow and long against the wavelength.</summary>
    /// <param name="seam">The seam.</param>
    /// <param name="frequency">f.</param>
    public static string? SeamCaution(Seam seam, Frequency frequency) =>
        seam.WidthMetres > MostSeamWidthWavelengths * frequency.WavelengthMetres
            ? "the seam is too wide compared with the wavelength for the formula; the loss is a rough estimate"
            : seam.LengthMetres < LeastSeamLengthWavelengths * frequency.WavelengthMetres
                ? "the seam is too short for the formula: near half a wavelength it passes more than computed, below that far less"
                : null;

    /// <summary>
    /// Loss of a panel with seams, head on, as the mean of both polarisations: the powers through the sheet and the seams add up.
    /// </summary>
    /// <param name="areaSquareMetres">A, area of the panel, m², above 0.</param>
    /// <param name="sheetLossDb">Loss of the sheet itself, dB, 0 or more; infinite for one without holes.</param>
    /// <param name="frequency">f.</param>
    /// <param name="seams">Its seams.</param>
    /// <returns>
    /// dB, 0 or more. It is the least loss that such open seams leave: laps, rebates and points of contact are not counted.
    /// </returns>
    public static double PanelLossHeadOnDb(double areaSquareMetres, double sheetLossDb, Frequency frequency, params ReadOnlySpan<Seam> seams) =>
        PanelLossDb(areaSquareMetres, sheetLossDb, 0.5 * SeamArea(seams, frequency));

    /// <summary>
    /// The same as a mean over all angles, weighted by the power each brings to the panel (2·cos θ over cos θ). Seams then pass
    /// twice as much: they collect the same from every direction, while the power on the panel's face falls with the cosine.
    /// </summary>
    /// <inheritdoc cref="PanelLossHeadOnDb"/>
    public static double PanelLossMeanDb(double areaSquareMetres, double sheetLossDb, Frequency frequency, params ReadOnlySpan<Seam> seams) =>
        PanelLossDb(areaSquareMetres, sheetLossDb, SeamArea(seams, frequency));

    private static double PanelLossDb(double areaSquareMetres, double sheetLossDb, double seamSquareMetres)
    {
        Check(areaSquareMetres, nameof(areaSquareMetres));
        if (!(sheetLossDb >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(sheetLossDb), sheetLossDb, "The loss of a sheet must be 0 dB or more.");
        }

        double passed = Decibels.ToPowerRatio(-sheetLossDb) + (seamSquareMetres / areaSquareMetres);
        return Math.Max(0, -Decibels.FromPowerRatio(passed));
    }

    private static double SeamArea(ReadOnlySpan<Seam> seams, Frequency frequency)
    {
        double sum = 0;
        foreach (Seam seam in seams)
        {
            Check(seam.LengthMetres, nameof(seams));
            sum += seam.LengthMetres * SlitWidthMetres(seam.WidthMetres, frequency);
        }

        return sum;
    }

    private static void Check(double value, string name)
    {
        if (!(value > 0) || double.IsInfinity(value))
        {
            throw new ArgumentOutOfRangeException(name, value, "It must be finite and above 0.");
        }
    }
}

/// <summary>An open seam at the edge of a metal panel.</summary>
/// <param name="LengthMetres">Length, metres, above 0.</param>
/// <param name="WidthMetres">Width of the gap, metres, above 0.</param>
public readonly record struct Seam(double LengthMetres, double WidthMetres);
