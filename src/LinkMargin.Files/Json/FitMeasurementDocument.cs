using LinkMargin.Engine.Fitting;

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
/// <param name="LeaveOneOutResidualDb">The residual where the fit has not seen it, dB; left out where that says nothing.</param>
/// <param name="ProbabilityBad">How likely it is a bad one, 0 to 1.</param>
public sealed record FitMeasurementDocument(
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
    double? LeaveOneOutResidualDb,
    double ProbabilityBad)
{
    internal static FitMeasurementDocument Of(Measurement measurement, FitResidual residual, double distanceM, double? leftOut) => new(
        measurement.Transmitter.Name,
        measurement.Receiver.Name,
        measurement.Devices,
        measurement.Lines,
        distanceM,
        measurement.IsHeard,
        measurement.LevelDbm,
        residual.PredictedDbm,
        residual.ResidualDb,
        residual.Measurement.NoiseDb,
        leftOut,
        residual.ProbabilityBad);
}
