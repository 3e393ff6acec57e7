using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Measuring;

namespace LinkMargin.Files.Json;

/// <summary>A fit to measurements, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Verdict">What the scatter of the measurements says: consistent, someMeasurementsLookWrong, modelLooksWrong, tooGoodToBeTrue.</param>
/// <param name="ChanceOfMoreScatter">Probability of at least this much scatter, 0 to 1.</param>
/// <param name="HasConverged">Whether the search converged.</param>
/// <param name="UsedMeasurements">Measurements included in the rms figures.</param>
/// <param name="Models">The fitted house and two simple models, on the same measurements.</param>
/// <param name="Measurements">Each measurement and the fit, in the order of the file.</param>
/// <param name="Materials">Each material before and after.</param>
/// <param name="Devices">Each pair of devices.</param>
/// <param name="Indistinguishable">Pairs that the measurements cannot separate, worst first.</param>
/// <param name="FittedFile">The file that was written; omitted if none was.</param>
/// <param name="Picture">The picture that was written; omitted if none was.</param>
public sealed record FitDocument(
    string House,
    string Verdict,
    double ChanceOfMoreScatter,
    bool HasConverged,
    int UsedMeasurements,
    IReadOnlyList<FitModelDocument> Models,
    IReadOnlyList<FitMeasurementDocument> Measurements,
    IReadOnlyList<FitMaterialDocument> Materials,
    IReadOnlyList<FitDeviceDocument> Devices,
    IReadOnlyList<FitPairDocument> Indistinguishable,
    string? FittedFile,
    string? Picture)
{
    /// <summary>What differs from the house file; omitted if nothing does.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>A fit as a document.</summary>
    public static FitDocument Of(HouseFit fit, string? fittedFile, string? picture)
    {
        ArgumentNullException.ThrowIfNull(fit);
        FitStudy study = fit.Study;
        string verdict = study.Goodness.Verdict.ToString();
        return new FitDocument(
            fit.House.Name,
            char.ToLowerInvariant(verdict[0]) + verdict[1..],
            study.Goodness.UpperTail,
            study.Fit.HasConverged,
            study.UsedMeasurements,
            [
                Law("house", study.Fit, study.LeaveOneOutDb),
                Law("freeSpace", study.FreeSpace.Fit, study.FreeSpace.LeaveOneOutDb),
                Law("distancePowerLaw", study.FreeExponent.Fit, study.FreeExponent.LeaveOneOutDb),
            ],
            [.. fit.Measurements.Select((measurement, i) => FitMeasurementDocument.Of(measurement, study.Fit.Residuals[i], fit.DistanceMetres(i), study.LeaveOneOutDb[i]))],
            [.. study.Fit.Materials.Select(FitMaterialDocument.Of)],
            [.. study.Fit.Devices.Select(device => new FitDeviceDocument(device.Name, device.OffsetDbm, device.SpreadDb, device.MeasurementCount))],
            [.. study.Indistinct.Select(pair => new FitPairDocument(pair.First, pair.Second, pair.Correlation))],
            fittedFile,
            picture);

        FitModelDocument Law(string name, LossFit law, IReadOnlyList<double?> leaveOneOut) => new(
            name, Finite(study.RmsInSampleDb(law)), Finite(study.RmsLeaveOneOutDb(leaveOneOut)));
    }

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;
}

/// <summary>A pair of devices after a fit, as JSON.</summary>
/// <param name="Devices">The name of the pair.</param>
/// <param name="OffsetDbm">The level it would show without path loss, dBm.</param>
/// <param name="SpreadDb">One standard deviation, dB.</param>
/// <param name="Measurements">How many measurements were made with it.</param>
public sealed record FitDeviceDocument(string Devices, double OffsetDbm, double SpreadDb, int Measurements);

/// <summary>How well a model predicts the measurements, as JSON.</summary>
/// <param name="Model">house, freeSpace or distancePowerLaw.</param>
/// <param name="RmsInSampleDb">Rms of the residuals, dB; omitted if no measurement counts.</param>
/// <param name="RmsLeaveOneOutDb">Leave-one-out rms of the residuals, dB; omitted if no measurement counts.</param>
public sealed record FitModelDocument(string Model, double? RmsInSampleDb, double? RmsLeaveOneOutDb);

/// <summary>A material before and after a fit, as JSON.</summary>
/// <param name="Material">Its row in the material table.</param>
/// <param name="TableLossDb">The table loss, dB.</param>
/// <param name="TableSpreadDb">One standard deviation in one house, dB.</param>
/// <param name="LossDb">The loss in this house, dB.</param>
/// <param name="SpreadDb">One standard deviation, dB.</param>
public sealed record FitMaterialDocument(string Material, double TableLossDb, double TableSpreadDb, double LossDb, double SpreadDb)
{
    internal static FitMaterialDocument Of(FittedMaterial fitted) =>
        new(fitted.Name, fitted.TableLossDb, fitted.TableSpreadDb, fitted.LossDb, fitted.SpreadDb);
}

/// <summary>A measurement compared with a fit, as JSON.</summary>
/// <param name="Transmitter">Where the transmitter was.</param>
/// <param name="Receiver">Where the receiver was.</param>
/// <param name="Devices">The pair of devices.</param>
/// <param name="Lines">Its lines in the file.</param>
/// <param name="DistanceM">Distance between the two, metres.</param>
/// <param name="IsHeard">Whether there was a level.</param>
/// <param name="LevelDbm">The measured level, dBm; if nothing was heard, the level below which the device hears nothing.</param>
/// <param name="PredictedDbm">The level the fit predicts, dBm.</param>
/// <param name="ResidualDb">Measured less predicted level, dB.</param>
/// <param name="NoiseDb">Expected difference between a good measurement and the model, one standard deviation, dB.</param>
/// <param name="LeaveOneOutResidualDb">The leave-one-out residual, dB; omitted if it is undetermined.</param>
/// <param name="ProbabilityBad">Probability that the measurement is bad, 0 to 1.</param>
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
    internal static FitMeasurementDocument Of(Measurement measurement, FitResidual residual, double distanceM, double? leaveOneOut) => new(
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
        leaveOneOut,
        residual.ProbabilityBad);
}

/// <summary>Two unknowns that the measurements cannot separate, as JSON.</summary>
/// <param name="First">A material or a pair of devices.</param>
/// <param name="Second">Another.</param>
/// <param name="Correlation">Correlation of their remaining errors, −1 to 1.</param>
public sealed record FitPairDocument(string First, string Second, double Correlation);

/// <summary>A file of measurements to fill in, as JSON.</summary>
/// <param name="Template">The file that was written.</param>
public sealed record TemplateDocument(string Template);
