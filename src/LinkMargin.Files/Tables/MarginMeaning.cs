namespace LinkMargin.Files.Tables;

/// <summary>What a margin means to somebody who plays.</summary>
/// <param name="MarginDb">The margin from which on it holds, dB.</param>
/// <param name="Means">What to expect, in words.</param>
/// <param name="Source">A citation, <c>common practice</c> or <c>from memory</c>.</param>
public sealed record MarginMeaning(double MarginDb, string Means, string Source);
