namespace LinkMargin.Engine.Readings;

/// <summary>What is known of a pair of devices before anything was read.</summary>
/// <param name="Name">What the pair is called.</param>
/// <param name="OffsetDbm">The level it would show with no loss between, dBm.</param>
/// <param name="SpreadDb">One standard deviation of that, dB, above 0.</param>
public sealed record DevicePrior(string Name, double OffsetDbm, double SpreadDb);
