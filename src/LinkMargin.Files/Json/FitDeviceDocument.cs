namespace LinkMargin.Files.Json;

/// <summary>A pair of devices after a fit, as JSON.</summary>
/// <param name="Devices">What the pair is called.</param>
/// <param name="OffsetDbm">The level it would show with no loss between, dBm.</param>
/// <param name="SpreadDb">How far that may be out, dB.</param>
/// <param name="Measurements">How many readings it was taken in.</param>
public sealed record FitDeviceDocument(string Devices, double OffsetDbm, double SpreadDb, int Measurements);
