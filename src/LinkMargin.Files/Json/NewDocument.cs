namespace LinkMargin.Files.Json;

/// <summary>What a new house consists of, as JSON.</summary>
/// <param name="HouseFile">The house file.</param>
/// <param name="Schema">The schema that editors use.</param>
public sealed record NewDocument(string HouseFile, string Schema);
