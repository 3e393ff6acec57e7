namespace LinkMargin.Files.Json;

/// <summary>Where the page of a house is, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Address">The address to open; it works for one browser, once.</param>
/// <param name="Port">The port on this machine.</param>
public sealed record PageDocument(string House, string Address, int Port);
