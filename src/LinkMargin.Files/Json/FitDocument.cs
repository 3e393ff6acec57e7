using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Measuring;

namespace LinkMargin.Files.Json;

/// <summary>A fit to readings, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Verdict">What the scatter of the readings says: consistent, someReadingsLookWrong, modelLooksWrong, tooGoodToBeTrue.</param>
/// <param name="ChanceOfMoreScatter">Chance of as much scatter as this or more, 0 to 1.</param>
/// <param name="HasConverged">Whether the search came to rest.</param>
/// <param name="CountedMeasurements">Readings that the rms figures are over.</param>
/// <param name="Laws">The fitted house and two plain laws, on the same readings.</param>
/// <param name="Measurements">Each reading against the fit, in the order of the file.</param>
/// <param name="Materials">Each material before and after.</param>
/// <param name="Devices">Each pair of devices.</param>
/// <param name="NotToldApart">What the readings do not tell apart, worst first.</param>
/// <param name="FittedFile">The file that was written; left out where none was.</param>
/// <param name="Picture">The picture that was written; left out where none was.</param>
public sealed record FitDocument(
    string House,
    string Verdict,
    double ChanceOfMoreScatter,
    bool HasConverged,
    int CountedMeasurements,
    IReadOnlyList<FitLawDocument> Laws,
    IReadOnlyList<FitMeasurementDocument> Measurements,
    IReadOnlyList<FitMaterialDocument> Materials,
    IReadOnlyList<FitDeviceDocument> Devices,
    IReadOnlyList<FitPairDocument> NotToldApart,
    string? FittedFile,
    string? Picture)
{
    /// <summary>What is different from the house file; left out where nothing is.</summary>
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
            study.CountedMeasurements,
            [
                Law("house", study.Fit, study.LeaveOneOutDb),
                Law("freeSpace", study.FreeSpace.Fit, study.FreeSpace.LeaveOneOutDb),
                Law("distanceLaw", study.FreeExponent.Fit, study.FreeExponent.LeaveOneOutDb),
            ],
            [.. fit.Measurements.Select((measurement, i) => FitMeasurementDocument.Of(measurement, study.Fit.Residuals[i], fit.DistanceMetres(i), study.LeaveOneOutDb[i]))],
            [.. study.Fit.Materials.Select(FitMaterialDocument.Of)],
            [.. study.Fit.Devices.Select(device => new FitDeviceDocument(device.Name, device.OffsetDbm, device.SpreadDb, device.MeasurementCount))],
            [.. study.Indistinct.Select(pair => new FitPairDocument(pair.First, pair.Second, pair.Correlation))],
            fittedFile,
            picture);

        FitLawDocument Law(string name, LossFit law, IReadOnlyList<double?> leftOut) => new(
            name, Finite(study.RmsInSampleDb(law)), Finite(study.RmsLeaveOneOutDb(leftOut)));
    }

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;
}
