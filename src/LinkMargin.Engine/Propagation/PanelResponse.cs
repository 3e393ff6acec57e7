namespace LinkMargin.Engine.Propagation;

/// <summary>What a panel does on average to a wave of unknown polarisation at one angle.</summary>
/// <param name="TransmissionLossDb">
/// Loss of the mean power that passes, dB, at most <see cref="LayeredSlab.GreatestLossDb"/>.
/// </param>
/// <param name="Absorptance">Mean share of the power turned to heat, 0 to 1.</param>
/// <param name="SpreadDb">Standard deviation of the loss over channels and examples of the panel, dB.</param>
/// <param name="ToleranceSpreadDb">
/// Standard deviation, over examples of the panel alone, of the loss of the band's mean power, dB.
/// </param>
public readonly record struct PanelResponse(
    double TransmissionLossDb, double Absorptance, double SpreadDb, double ToleranceSpreadDb)
{
    /// <summary>Mean share of the power that passes, 0 to 1.</summary>
    public double Transmittance => Math.Pow(10, -TransmissionLossDb / 10);

    /// <summary>Mean share of the power thrown back, 0 to 1: what neither passes nor heats.</summary>
    public double Reflectance => Math.Max(0, 1 - Transmittance - Absorptance);
}
