namespace LinkMargin.Engine.Readings;

/// <summary>One reading as the estimator sees it.</summary>
/// <param name="Link">Which link of the model it is of.</param>
/// <param name="Device">Which pair of devices it was taken with.</param>
/// <param name="LevelDbm">The level received, dBm; where nothing was heard, the level below which nothing is.</param>
/// <param name="IsHeard">Whether there was a level; if not, all that is known is that it lay below.</param>
/// <param name="NoiseDb">
/// One standard deviation of what parts it from the model: fading left in it, what the model leaves out, what differs from
/// crossing to crossing; dB, above 0.
/// </param>
public readonly record struct FitReading(int Link, int Device, double LevelDbm, bool IsHeard, double NoiseDb);
