using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Links;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Words;

/// <summary>How far a margin stands above or below what its seat asks for, in words.</summary>
internal static class Headroom
{
    /// <summary>Margin less required, as the two are printed, of the worst seat of a spot, by the margin that counts.</summary>
    public static long TenthsOf(SpotScore score) => TenthsOf(score.Worst, score.By);

    /// <summary>The words for the worst seat of a spot, by the margin that counts.</summary>
    public static string Words(SpotScore score) => Words(score.Worst, score.By);

    private static long TenthsOf(LinkBudget budget, DecisionMargin by) => ShownMargin.HeadroomTenths(by.MarginDb(budget), budget.RequiredDb);

    /// <summary><c>4.2 dB above</c>, <c>3.1 dB short of</c>: goes before what the seat asks for.</summary>
    public static string Words(LinkBudget budget, DecisionMargin by)
    {
        long tenths = TenthsOf(budget, by);
        return tenths switch
        {
            0 => "just at",
            > 0 => $"{Tenths.Show(tenths)} dB above",
            _ => $"{Tenths.Show(-tenths)} dB short of",
        };
    }
}
