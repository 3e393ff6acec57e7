namespace LinkMargin.Plots.Labels;

/// <summary>Where a label went.</summary>
/// <param name="Box">Its place.</param>
/// <param name="HasLeader">Whether it stands so far off that a line to its mark is needed.</param>
internal sealed record PlacedLabel(LabelBox Box, bool HasLeader);
