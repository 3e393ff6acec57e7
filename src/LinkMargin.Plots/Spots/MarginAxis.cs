using LinkMargin.Plots.Drawing;

namespace LinkMargin.Plots.Spots;

/// <summary>The margins that seats against spots run over.</summary>
internal static class MarginAxis
{
    private const double LeastSpanDb = 30;
    private const double EdgeDb = 1;
    private const int MostSteps = 12;

    /// <summary>The axis that holds every bar, every required margin and 0, dB.</summary>
    public static DecibelAxis Of(IReadOnlyList<SpotsSeat> seats)
    {
        double[] all = [0, .. seats.SelectMany(seat => seat.Bars.SelectMany(bar => new[] { bar.MarginAtConfidenceDb, bar.HighDb }).Append(seat.RequiredDb))];
        var axis = DecibelAxis.Over(all.Min(), all.Max(), EdgeDb, MostSteps);
        return axis with { Greatest = Math.Max(axis.Greatest, axis.Least + LeastSpanDb) };
    }
}
