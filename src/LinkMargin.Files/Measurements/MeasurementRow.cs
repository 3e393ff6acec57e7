using LinkMargin.Engine.Fitting;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Measurements;

/// <summary>One line that holds a level, or that nothing was heard.</summary>
/// <param name="Transmitter">Where the transmitter was.</param>
/// <param name="Receiver">Where the receiver was.</param>
/// <param name="Devices">What sent and what received.</param>
/// <param name="LevelDbm">The level, dBm; null where nothing was heard.</param>
/// <param name="BoundDbm">The level below which nothing is heard, dBm; null where the line does not say.</param>
/// <param name="Mark">Where the level stands.</param>
internal sealed record MeasurementRow(
    MeasurementEnd Transmitter, MeasurementEnd Receiver, DevicePair Devices, double? LevelDbm, double? BoundDbm, Mark Mark);
