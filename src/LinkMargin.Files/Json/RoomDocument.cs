namespace LinkMargin.Files.Json;

/// <summary>One room, as JSON.</summary>
/// <param name="Name">Its name.</param>
/// <param name="AreaM2">Its area, square metres.</param>
public sealed record RoomDocument(string Name, double AreaM2);
