namespace LinkMargin.Engine.Houses;

/// <summary>
/// How uncertain the figures are, apart from what each material and radio says of itself. One standard deviation each.
/// </summary>
/// <param name="ModelDb">What the model leaves out, on each link by itself, dB.</param>
/// <param name="CrossingShare">Share of a material's variance that differs from crossing to crossing in one house, 0 to 1.</param>
/// <param name="MeasurementDb">One received level as a person takes it, dB.</param>
/// <param name="BadMeasurementShare">Share of measurements that are simply wrong, 0 to below 1.</param>
/// <param name="BadMeasurementDb">Spread of the levels those show, dB.</param>
/// <param name="DeviceOffsetDbm">The level a pair of devices would show with no loss between them, before anything was read, dBm.</param>
/// <param name="DeviceDb">How far that may be out, dB.</param>
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

    /// <summary>Spread of the shift that each crossing of a material has for itself, dB.</summary>
    /// <param name="materialDb">The material's spread, dB.</param>
    public double EachCrossingDb(double materialDb) => materialDb * Math.Sqrt(CrossingShare);
}
