namespace LinkMargin.Engine.Fitting;

/// <summary>
/// How many measurements are simply wrong, and by how much. Each measurement is taken to be good or bad: good with normal errors,
/// bad anywhere, all levels a device shows being alike. Against the usual robust choices: Huber's cost bounds what a bad
/// measurement does but never ignores it, so that one of ten with a link of its own still moves a loss by more than a
/// decibel; Student's t lets go slowly, and takes good measurements for less than they are worth, so that intervals come out
/// too wide. Good-or-bad does what normal errors do for good measurements, lets go of bad ones for good, its two figures mean
/// something to a person, and it says of each measurement how likely it is bad.
/// </summary>
/// <param name="Share">Share of bad measurements, 0 to below 1; 0 makes the errors normal.</param>
/// <param name="SpreadDb">One standard deviation of the levels bad measurements show, dB; above 0 unless none is bad.</param>
public sealed record BadMeasurements(double Share, double SpreadDb)
{
    /// <summary>Probability that a bad measurement hears nothing.</summary>
    internal const double ChanceOfSilence = 0.5;

    /// <summary>None is bad: normal errors.</summary>
    public static BadMeasurements None { get; } = new(0, 0);

    /// <summary>Density of a bad measurement's level, 1/dB: flat, as wide as its spread says.</summary>
    internal double Density => 1 / (SpreadDb * Math.Sqrt(12));
}
