using LinkMargin.Engine.Readings;

namespace LinkMargin.Files.Json;

/// <summary>A reading against a fit, as JSON.</summary>
/// <param name="Transmitter">Where the transmitter was.</param>
/// <param name="Receiver">Where the receiver was.</param>
/// <param name="Devices">The pair of devices.</param>
/// <param name="Lines">The lines of the file it is from.</param>
/// <param name="DistanceM">Between the two, metres.</param>
/// <param name="IsHeard">Whether there was a level.</param>
/// <param name="LevelDbm">The level read, dBm; where nothing was heard, the level below which nothing is.</param>
/// <param name="PredictedDbm">The level the fit predicts, dBm.</param>
/// <param name="ResidualDb">Read less predicted, dB.</param>
/// <param name="NoiseDb">What parts a good reading from the model, one standard deviation, dB.</param>
/// <param name="LeftOutResidualDb">The residual where the fit has not seen it, dB; left out where that says nothing.</param>
/// <param name="ProbabilityBad">How likely it is a bad one, 0 to 1.</param>
public sealed record FitReadingDocument(
    string Transmitter,
    string Receiver,
    string Devices,
    IReadOnlyList<int> Lines,
    double DistanceM,
    bool IsHeard,
    double LevelDbm,
    double PredictedDbm,
    double ResidualDb,
    double NoiseDb,
    double? LeftOutResidualDb,
    double ProbabilityBad)
{
    internal static FitReadingDocument Of(Reading reading, FitResidual residual, double distanceM, double? leftOut) => new(
        reading.Transmitter.Name,
        reading.Receiver.Name,
        reading.Devices,
        reading.Lines,
        distanceM,
        reading.IsHeard,
        reading.LevelDbm,
        residual.PredictedDbm,
        residual.ResidualDb,
        residual.Reading.NoiseDb,
        leftOut,
        residual.ProbabilityBad);
}
