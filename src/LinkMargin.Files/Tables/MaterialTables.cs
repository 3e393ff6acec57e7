using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Tables;

/// <summary>The words a house file may use for what things are made of and for radios.</summary>
/// <param name="Materials">Materials by name.</param>
/// <param name="BuildUps">Floor build-ups by name.</param>
/// <param name="Radios">Radios by name.</param>
public sealed record MaterialTables(
    IReadOnlyDictionary<string, Material> Materials,
    IReadOnlyDictionary<string, FloorBuildUp> BuildUps,
    IReadOnlyDictionary<string, Radio> Radios);
