namespace LinkMargin.Files.Json;

/// <summary>How well a law does on the readings, as JSON.</summary>
/// <param name="Law">house, freeSpace or distanceLaw.</param>
/// <param name="RmsInSampleDb">Rms of the residuals, dB; left out where no reading counts.</param>
/// <param name="RmsLeaveOneOutDb">Rms of the residuals on readings that were left out of the fit, dB; left out where no reading counts.</param>
public sealed record FitLawDocument(string Law, double? RmsInSampleDb, double? RmsLeaveOneOutDb);
