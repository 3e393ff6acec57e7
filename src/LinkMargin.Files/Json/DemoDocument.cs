namespace LinkMargin.Files.Json;

/// <summary>The output of the demonstration, as JSON.</summary>
/// <param name="Folder">Where its files are.</param>
/// <param name="HouseFile">The house file, a starting point for the user's own.</param>
/// <param name="MeasurementsFile">Invented measurements of the house, to fit it to.</param>
/// <param name="Plan">The drawing of the house.</param>
/// <param name="Comparison">Seats against spots, and which spot to choose.</param>
/// <param name="Budget">The chosen spot's weakest seat.</param>
/// <param name="Maps">The maps.</param>
public sealed record DemoDocument(
    string Folder,
    string HouseFile,
    string MeasurementsFile,
    string Plan,
    ComparisonDocument Comparison,
    BudgetDocument Budget,
    MapsDocument Maps);

/// <summary>What a new house consists of, as JSON.</summary>
/// <param name="HouseFile">The house file.</param>
/// <param name="Schema">The schema that editors use.</param>
public sealed record NewDocument(string HouseFile, string Schema);
