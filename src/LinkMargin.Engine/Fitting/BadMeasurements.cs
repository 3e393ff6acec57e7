namespace LinkMargin.Engine.Fitting;

/// <summary>
/// How many measurements are simply wrong, and by how much. Each measurement is either good, with normal errors, or bad, with all
/// levels a device can show equally likely. Compared with the usual robust choices: Huber's cost limits the effect of a bad
/// measurement but never ignores it, so one in ten, on a link of its own, still shifts a loss by more than a decibel. Student's t
/// lets go slowly and underrates good measurements, so intervals become too wide. Good-or-bad treats good measurements as normal
/// errors do, drops bad ones completely, has two figures that mean something to a person, and gives for each measurement the
/// probability that it is bad.
/// </summary>
/// <param name="Share">Share of bad measurements, 0 to below 1; 0 makes the errors normal.</param>
/// <param name="SpreadDb">One standard deviation of the levels bad measurements show, dB; above 0 unless none is bad.</param>
public sealed record BadMeasurements(double Share, double SpreadDb)
{
    /// <summary>Probability that a bad measurement hears nothing.</summary>
    internal const double ChanceOfSilence = 0.5;

    /// <summary>None is bad: normal errors.</summary>
    public static BadMeasurements None { get; } = new(0, 0);

    /// <summary>Density of a bad measurement's level, 1/dB: uniform, with its spread.</summary>
    internal double Density => 1 / (SpreadDb * Math.Sqrt(12));
}
