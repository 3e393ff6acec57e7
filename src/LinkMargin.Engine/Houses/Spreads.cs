namespace LinkMargin.Engine.Houses;

/// <summary>
/// How uncertain the figures are, apart from the spread of each material and radio. One standard deviation each.
/// </summary>
/// <param name="ModelDb">What the model leaves out, independent for each link, dB.</param>
/// <param name="CrossingShare">Share of a material's variance that differs from crossing to crossing in one house, 0 to 1.</param>
/// <param name="MeasurementDb">One received level as a person measures it, dB.</param>
/// <param name="BadMeasurementShare">Share of measurements that are simply wrong, 0 to below 1.</param>
/// <param name="BadMeasurementDb">Spread of the levels those show, dB.</param>
/// <param name="DeviceOffsetDbm">The level that a pair of devices is expected to show with no loss between them, before any measurement, dBm.</param>
/// <param name="DeviceDb">Spread of that level, dB.</param>
public sealed record Spreads(
    double ModelDb,
    double CrossingShare,
    double MeasurementDb,
    double BadMeasurementShare,
    double BadMeasurementDb,
    double DeviceOffsetDbm,
    double DeviceDb)
{
    /// <summary>Spread of the shift that all of a material in one house has in common, dB.</summary>
    /// <param name="materialDb">The material's spread, dB.</param>
    public double InCommonDb(double materialDb) => materialDb * Math.Sqrt(1 - CrossingShare);

    /// <summary>Spread of the shift that each crossing of a material has of its own, dB.</summary>
    /// <param name="materialDb">The material's spread, dB.</param>
    public double EachCrossingDb(double materialDb) => materialDb * Math.Sqrt(CrossingShare);
}
