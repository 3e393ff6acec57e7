namespace LinkMargin.Engine.Readings;

/// <summary>A pair of devices after the fit.</summary>
/// <param name="Name">What the pair is called.</param>
/// <param name="OffsetDbm">The level it would show with no loss between, dBm.</param>
/// <param name="SpreadDb">How far that may be out, dB.</param>
/// <param name="ReadingCount">How many readings it was taken in.</param>
public sealed record FittedDevice(string Name, double OffsetDbm, double SpreadDb, int ReadingCount);
