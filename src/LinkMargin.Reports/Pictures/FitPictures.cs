using System.Globalization;
using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Measuring;
using LinkMargin.Plots.Charts;

namespace LinkMargin.Reports.Pictures;

/// <summary>The picture of a fit: the fitted house and two simple models with the same measurements.</summary>
internal static class FitPictures
{
    /// <summary>Draws the picture.</summary>
    public static byte[] Render(HouseFit fit)
    {
        FitStudy study = fit.Study;
        int farthest = Enumerable.Range(0, fit.Measurements.Count)
            .MaxBy(i => Math.Abs(study.Fit.Residuals[i].ResidualDb) / study.Fit.Residuals[i].Measurement.NoiseDb);
        var request = new FitRequest(
            Title(fit),
            string.Create(CultureInfo.InvariantCulture, $"{fit.Measurements.Count} measurements; each model has its own offset for each pair of devices. Rms over ")
                + string.Create(CultureInfo.InvariantCulture, $"{study.UsedMeasurements} of them: in sample, and leave-one-out, which shows how well positions that were not measured are predicted."),
            [
                Panel("fitted house", study.Fit, study.LeaveOneOutDb),
                Panel(
                    string.Create(CultureInfo.InvariantCulture, $"distance power law, exponent {study.FreeExponent.Fit.Materials[0].LossDb:0.0}"),
                    study.FreeExponent.Fit,
                    study.FreeExponent.LeaveOneOutDb),
                Panel("free space", study.FreeSpace.Fit, study.FreeSpace.LeaveOneOutDb),
            ])
        {
            NoiseDb = study.Fit.Residuals.Average(residual => residual.Measurement.NoiseDb),
        };
        return FitPicture.Render(request, FitPicture.FittingSize(request));

        FitPanel Panel(string title, LossFit law, IReadOnlyList<double?> leaveOneOut) => new(
            title,
            $"rms {Figure(study.RmsInSampleDb(law))} dB in sample, {Figure(study.RmsLeaveOneOutDb(leaveOneOut))} dB leave-one-out",
            [
                .. law.Residuals.Select((residual, i) => new FitPoint(
                    residual.Measurement.LevelDbm,
                    residual.PredictedDbm,
                    residual.Measurement.IsHeard,
                    study.Fit.Residuals[i].LooksBad,
                    i == farthest && law == study.Fit ? $"{fit.Measurements[i].Transmitter.Name} to {fit.Measurements[i].Receiver.Name}" : null)),
            ]);
    }

    private static string Title(HouseFit fit)
    {
        FitStudy study = fit.Study;
        double house = study.RmsLeaveOneOutDb(study.LeaveOneOutDb), law = study.RmsLeaveOneOutDb(study.FreeExponent.LeaveOneOutDb);
        return double.IsFinite(house) && double.IsFinite(law)
            ? $"{fit.House.Name}: the fitted house predicts unseen levels to {Figure(house)} dB rms, a distance power law to {Figure(law)} dB"
            : $"{fit.House.Name}: measured levels against predictions";
    }

    private static string Figure(double db) => double.IsFinite(db) ? db.ToString("0.0", CultureInfo.InvariantCulture) : "-";
}
