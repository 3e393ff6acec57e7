using LinkMargin.Engine.Houses;

namespace LinkMargin.Plots.Plans;

/// <summary>A seat as a map shows it.</summary>
/// <param name="Seat">The seat.</param>
/// <param name="MarginDb">Its margin to the map's spot, dB.</param>
/// <param name="Passes">Whether that is enough for this seat.</param>
public sealed record SeatMark(Seat Seat, double MarginDb, bool Passes)
{
    /// <summary>The margin by which it meets or does not, where that is another than is written, dB.</summary>
    public double? MarginAtConfidenceDb { get; init; }
}
