namespace LinkMargin.Plots.Spots;

/// <summary>One seat in a picture of seats against spots.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Detail">The level it is on and the like, in a few words.</param>
/// <param name="RequiredDb">What it asks for, dB.</param>
/// <param name="Bars">Its margins, one for each spot it plays at.</param>
public sealed record SpotsSeat(string Name, string Detail, double RequiredDb, IReadOnlyList<SpotBar> Bars);
