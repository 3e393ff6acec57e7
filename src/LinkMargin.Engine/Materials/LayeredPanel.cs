using System.Numerics;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using MathNet.Numerics.Integration;

namespace LinkMargin.Engine.Materials;

/// <summary>
/// A wall, floor or door of parallel layers in air, for a wave of unknown polarisation: the power mean of TE and TM, over a
/// band's channels and over the stated tolerance of each layer's thickness, as functions of the angle.
/// Recommendation ITU-R P.2040-3 (08/2023), Annex 1, sections 2.2.2 and 3, for the slab; the averaging is this program's:
/// a controller is held at any tilt and hops over the band, and no two cavities have the same depth.
/// <para>
/// The functions are tabulated once, at a hundred to a few hundred angles, closer where they curve more, and interpolated
/// linearly in ln cos θ, in which the fall towards grazing is a straight line. Building the table takes some tenths of a
/// millisecond, so keep the panel. A panel never changes and may be read from any number of threads.
/// </para>
/// </summary>
public sealed class LayeredPanel
{
    /// <summary>
    /// Greatest angle of incidence at which an infinite plane slab is a fair model, degrees: at this angle the wave's footprint on
    /// the panel is eleven times as long as the wave is wide, and real panels end (judgement, from memory of common practice).
    /// </summary>
    public const double GreatestComfortDegrees = 85;

    /// <summary>
    /// Greatest difference between an interpolated loss and the computed mean, dB: steps of the table are halved until it is met.
    /// </summary>
    public const double TableToleranceDb = 0.01;

    private const double TableToleranceShare = 5e-4;
    private const double TableToleranceSpreadDb = 0.05;
    private const int DeepestHalving = 12;
    private const int DiffuseNodes = 48;

    private static readonly string TooFlat = FormattableString.Invariant(
        $"hit at more than {GreatestComfortDegrees:0} deg from head-on, where a real panel is too short for the layer formula; the loss of this path is a rough estimate");

    private static readonly double LeastComfortCosine = Math.Cos(double.DegreesToRadians(GreatestComfortDegrees));
    private static readonly double LeastLog = Math.Log(LayeredSlab.LeastCosine);

    private readonly Layer[] layers;
    private readonly Band band;
    private readonly double[] logs;
    private readonly PanelResponse[] table;
    private readonly Lazy<(double Transmittance, double Absorptance)> diffuse; // saves about fifty angles where it is not read

    /// <summary>Computes the table of a panel.</summary>
    /// <param name="layers">Layers in the order that the wave meets them, at least one.</param>
    /// <param name="band">Channels to average over.</param>
    public LayeredPanel(IReadOnlyList<Layer> layers, Band band)
    {
        ArgumentOutOfRangeException.ThrowIfZero(layers.Count, nameof(layers));
        this.layers = [.. layers];
        this.band = band;
        Mean = new PanelMean(this.layers, band);
        (logs, table) = Tabulate(Mean);
        diffuse = new(() => Diffuse(Mean));
    }

    /// <summary>Share of a diffuse field's power on the panel that passes: ∫ T(θ)·2·sin θ·cos θ dθ from 0 to 90°.</summary>
    public double DiffuseTransmittance => diffuse.Value.Transmittance;

    /// <summary>Share of a diffuse field's power on the panel that it absorbs, by the same integral.</summary>
    public double DiffuseAbsorptance => diffuse.Value.Absorptance;

    /// <summary>Share of a diffuse field's power on the panel that it reflects: the rest.</summary>
    public double DiffuseReflectance => Math.Max(0, 1 - DiffuseTransmittance - DiffuseAbsorptance);

    /// <summary>The mean the table was made from.</summary>
    internal PanelMean Mean { get; }

    /// <summary>The same panel from its other face: the same transmission, another reflection where it absorbs.</summary>
    public LayeredPanel Reversed() => new([.. layers.Reverse()], band);

    /// <summary>The caution to show at a cosine of incidence; null within <see cref="GreatestComfortDegrees"/>.</summary>
    public static string? CautionAt(double cosIncidence) => cosIncidence < LeastComfortCosine ? TooFlat : null;

    /// <summary>Response at an angle of incidence.</summary>
    /// <param name="incidenceDegrees">θ, angle to the normal, 0 to 90.</param>
    public PanelResponse At(double incidenceDegrees)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(incidenceDegrees);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(incidenceDegrees, 90);
        return AtCosine(Math.Cos(double.DegreesToRadians(incidenceDegrees)));
    }

    /// <summary>Response at a cosine of incidence.</summary>
    /// <param name="cosIncidence">cos θ, 0 to 1; below <see cref="LayeredSlab.LeastCosine"/> as at that angle.</param>
    public PanelResponse AtCosine(double cosIncidence)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(cosIncidence, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(cosIncidence);
        double log = cosIncidence > LayeredSlab.LeastCosine ? Math.Log(cosIncidence) : LeastLog;
        int found = Array.BinarySearch(logs, log);
        int above = Math.Clamp(found < 0 ? ~found : found, 1, logs.Length - 1);
        double share = (log - logs[above - 1]) / (logs[above] - logs[above - 1]);
        return Between(table[above - 1], table[above], share);
    }

    private static PanelResponse Between(in PanelResponse a, in PanelResponse b, double share) => new(
        a.TransmissionLossDb + (share * (b.TransmissionLossDb - a.TransmissionLossDb)),
        a.Absorptance + (share * (b.Absorptance - a.Absorptance)),
        a.SpreadDb + (share * (b.SpreadDb - a.SpreadDb)),
        a.ToleranceSpreadDb + (share * (b.ToleranceSpreadDb - a.ToleranceSpreadDb)))
    {
        InStep = a.InStep + (share * (b.InStep - a.InStep)),
    };

    private static (double[] Logs, PanelResponse[] Table) Tabulate(PanelMean mean)
    {
        // Starting steps: every 2.5° to 87.5°, then a third of the cosine each. Each is halved until its middle is on the line.
        List<double> starts = [.. Enumerable.Range(0, 36).Select(i => Math.Log(Math.Cos(double.DegreesToRadians(2.5 * i))))];
        while (starts[^1] - Math.Log(3) > LeastLog)
        {
            starts.Add(starts[^1] - Math.Log(3));
        }

        starts.Add(LeastLog);
        starts.Reverse();

        List<double> logs = [starts[0]];
        List<PanelResponse> table = [At(starts[0])];
        foreach (double end in starts.Skip(1))
        {
            Refine(end, At(end), DeepestHalving);
        }

        return ([.. logs], [.. table]);

        PanelResponse At(double log) => mean.At(Math.Min(1, Math.Exp(log)));

        // Adds everything after the last entry up to and including the end.
        void Refine(double end, PanelResponse atEnd, int depth)
        {
            double start = logs[^1], middle = (start + end) / 2;
            PanelResponse atMiddle = At(middle), line = Between(table[^1], atEnd, 0.5);
            if (depth > 0 && !IsOnLine(atMiddle, line))
            {
                Refine(middle, atMiddle, depth - 1);
                Refine(end, atEnd, depth - 1);
                return;
            }

            logs.AddRange([middle, end]);
            table.AddRange([atMiddle, atEnd]);
        }
    }

    private static bool IsOnLine(in PanelResponse actual, in PanelResponse line) =>
        Math.Abs(actual.TransmissionLossDb - line.TransmissionLossDb) <= TableToleranceDb
        && Math.Abs(actual.Absorptance - line.Absorptance) <= TableToleranceShare
        && Math.Abs(actual.Reflectance - line.Reflectance) <= TableToleranceShare
        && Math.Abs(actual.SpreadDb - line.SpreadDb) <= TableToleranceSpreadDb
        && Math.Abs(actual.ToleranceSpreadDb - line.ToleranceSpreadDb) <= TableToleranceSpreadDb;

    /// <summary>
    /// Means over the half space by Gauss-Legendre in cos θ, without the table, so that a lossless panel conserves power.
    /// </summary>
    private static (double Transmittance, double Absorptance) Diffuse(PanelMean mean)
    {
        var rule = new GaussLegendreRule(0, 1, DiffuseNodes);
        double transmittance = 0, absorptance = 0;
        for (int i = 0; i < DiffuseNodes; i++)
        {
            double cos = rule.GetAbscissa(i), weight = 2 * cos * rule.GetWeight(i);
            PanelResponse response = mean.At(cos);
            transmittance += weight * response.Transmittance;
            absorptance += weight * response.Absorptance;
        }

        return (transmittance, absorptance);
    }
}

/// <summary>What a panel does on average to a wave of unknown polarisation at one angle.</summary>
/// <param name="TransmissionLossDb">
/// Loss of the mean power that passes, dB, at most <see cref="LayeredSlab.GreatestLossDb"/>.
/// </param>
/// <param name="Absorptance">Mean share of the power turned to heat, 0 to 1.</param>
/// <param name="SpreadDb">Standard deviation of the loss over channels and examples of the panel, dB.</param>
/// <param name="ToleranceSpreadDb">
/// Standard deviation, over examples of the panel alone, of the loss of the band's mean power, dB.
/// </param>
public readonly record struct PanelResponse(
    double TransmissionLossDb, double Absorptance, double SpreadDb, double ToleranceSpreadDb)
{
    /// <summary>
    /// The coherent part of the reflection: the reflected electric field along the incident one, mean over both polarisations, channels
    /// and examples, share of the incident field at the face. Only this can interfere with the wave that passes by the panel.
    /// </summary>
    public Complex InStep { get; init; }

    /// <summary>Mean share of the power that passes, 0 to 1.</summary>
    public double Transmittance => Math.Pow(10, -TransmissionLossDb / 10);

    /// <summary>Mean share of the power reflected, 0 to 1: what neither passes nor is absorbed.</summary>
    public double Reflectance => Math.Max(0, 1 - Transmittance - Absorptance);
}

/// <summary>Which way the electric field points, seen from the plane of incidence.</summary>
public enum Polarisation
{
    /// <summary>TE: the electric field is perpendicular to the plane of incidence.</summary>
    TransverseElectric,

    /// <summary>TM: the electric field lies in the plane of incidence.</summary>
    TransverseMagnetic,
}
