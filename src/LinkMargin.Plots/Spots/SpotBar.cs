namespace LinkMargin.Plots.Spots;

/// <summary>One seat's margin with one spot.</summary>
/// <param name="Spot">The spot, by its place in the request's list.</param>
/// <param name="MarginAtConfidenceDb">The margin to count on, dB.</param>
/// <param name="MedianDb">The median, dB.</param>
/// <param name="HighDb">The margin that is exceeded as seldom as the one to count on is missed, dB.</param>
/// <param name="IsMet">Whether the margin to count on is what the seat asks for or more.</param>
public sealed record SpotBar(int Spot, double MarginAtConfidenceDb, double MedianDb, double HighDb, bool IsMet);
