namespace LinkMargin.Files.Json;

/// <summary>Two unknowns that readings do not tell apart, as JSON.</summary>
/// <param name="First">A material or a pair of devices.</param>
/// <param name="Second">Another.</param>
/// <param name="Correlation">Of what is still out about them, −1 to 1.</param>
public sealed record FitPairDocument(string First, string Second, double Correlation);
