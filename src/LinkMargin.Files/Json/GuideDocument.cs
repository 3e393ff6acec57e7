namespace LinkMargin.Files.Json;

/// <summary>The user's guide, as JSON.</summary>
/// <param name="Topics">All topics without their text, or one topic with its text.</param>
public sealed record GuideDocument(IReadOnlyList<GuideTopicDocument> Topics);

/// <summary>One topic of the guide, as JSON.</summary>
/// <param name="Name">What to type.</param>
/// <param name="About">What it explains.</param>
/// <param name="Markdown">Its text; omitted in a list of topics.</param>
public sealed record GuideTopicDocument(string Name, string About, string? Markdown);
