namespace LinkMargin.Files.Tables;

/// <summary>Which file each table was read from, as a person would name it.</summary>
/// <param name="Materials">The materials' file.</param>
/// <param name="BuildUps">The floor build-ups' file.</param>
/// <param name="Radios">The radios' file.</param>
/// <param name="Margins">The margins' file.</param>
/// <param name="Spreads">The spreads' file.</param>
public sealed record TableFiles(string Materials, string BuildUps, string Radios, string Margins, string Spreads);
