using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Measurements;

/// <summary>What a file of readings may say. Each check and its message come from here.</summary>
internal static class MeasurementLimits
{
    /// <summary>Rows of one file.</summary>
    public const int MostRows = 20_000;

    /// <summary>Links after repeated rows were put together.</summary>
    public const int MostMeasurements = 2_000;

    /// <summary>Nearer than this the two ends are in one place.</summary>
    public const double OnePlaceMetres = 0.05;

    /// <summary>A level received: from below the noise of any receiver to what a device shows beside its transmitter.</summary>
    public static QuantityRange Received { get; } = new(-130, 0, "dBm");
}
