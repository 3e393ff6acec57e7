namespace LinkMargin.Engine.Readings;

/// <summary>What was received on one link with one pair of devices: one row that a person wrote, or the mean of several.</summary>
/// <param name="Transmitter">Where the transmitter was.</param>
/// <param name="Receiver">Where the receiver was.</param>
/// <param name="Devices">The pair of devices.</param>
/// <param name="LevelDbm">The level received, dBm; where nothing was heard, the level below which nothing is.</param>
/// <param name="IsHeard">Whether there was a level.</param>
public sealed record Reading(ReadingEnd Transmitter, ReadingEnd Receiver, string Devices, double LevelDbm, bool IsHeard)
{
    /// <summary>How many samples it is the mean of.</summary>
    public int SampleCount { get; init; } = 1;

    /// <summary>The lines of the file it is from.</summary>
    public IReadOnlyList<int> Lines { get; init; } = [];
}
