namespace LinkMargin.Engine.Uncertainty;

/// <summary>A question behind a decision: whether some difference of margins is above 0.</summary>
internal sealed class DecisionQuestion
{
    private readonly LossVector vector;
    private readonly double variance;
    private double explained;

    /// <summary>Makes a question.</summary>
    /// <param name="aheadDb">The difference at the tables' losses, dB.</param>
    /// <param name="vector">How it depends on the losses.</param>
    internal DecisionQuestion(double aheadDb, LossVector vector)
    {
        this.vector = vector;
        variance = vector.Dot(vector, 0);
        InSpreads = variance > 0 ? aheadDb / Math.Sqrt(variance) : aheadDb >= 0 ? double.PositiveInfinity : double.NegativeInfinity;
    }

    /// <summary>The difference over its standard deviation.</summary>
    internal double InSpreads { get; }

    /// <summary>Share of its variance that the measurements so far and one more would explain.</summary>
    internal double ShareExplained(LossVector measurement, double deviceDb, double noiseDb)
    {
        double together = vector.Dot(measurement, deviceDb), whole = measurement.Dot(measurement, deviceDb) + (noiseDb * noiseDb);
        return variance > 0 ? Math.Min(1, (explained + (together * together / whole)) / variance) : 0;
    }

    /// <summary>Adds a measurement to those so far.</summary>
    internal void Explain(LossVector measurement, double deviceDb, double scale)
    {
        double together = vector.Dot(measurement, deviceDb) / scale;
        explained += together * together;
        vector.Condition(measurement, deviceDb, scale);
    }
}
