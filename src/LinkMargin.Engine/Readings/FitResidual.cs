namespace LinkMargin.Engine.Readings;

/// <summary>A reading against the fit.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="PredictedDbm">The level the fit predicts, dBm.</param>
/// <param name="ProbabilityBad">How likely the reading is a bad one, 0 to 1.</param>
public sealed record FitResidual(FitReading Reading, double PredictedDbm, double ProbabilityBad)
{
    /// <summary>Read less predicted, dB; where nothing was heard, 0 unless a level above the bound is predicted.</summary>
    public double ResidualDb
    {
        get
        {
            double apart = Reading.LevelDbm - PredictedDbm;
            return Reading.IsHeard ? apart : Math.Min(0, apart);
        }
    }

    /// <summary>Whether it is more likely bad than good.</summary>
    public bool LooksBad => ProbabilityBad > 0.5;
}
