namespace LinkMargin.Files.Json;

/// <summary>A file of readings to fill in, as JSON.</summary>
/// <param name="Template">The file that was written.</param>
public sealed record TemplateDocument(string Template);
