namespace LinkMargin.Engine.Readings;

/// <summary>What is known of a material before anything was read.</summary>
/// <param name="Name">Its row in the material table.</param>
/// <param name="LossDb">Its table loss, dB: a shift never takes more away.</param>
/// <param name="SpreadDb">One standard deviation of the shift, dB; 0 for a material that is not fitted.</param>
public sealed record MaterialPrior(string Name, double LossDb, double SpreadDb);
