using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Links;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Words;

/// <summary>How far a margin is above or below the required margin, in words.</summary>
internal static class Headroom
{
    /// <summary>What tables call this difference.</summary>
    public const string Name = "against required";

    /// <summary>The same as the heading of a narrow column.</summary>
    public const string Heading = "against\nrequired";

    /// <summary>What its signs mean, for once on each output that has it.</summary>
    public const string Note = $"{Name}: margin above (+) or below (-) the required margin";

    /// <summary>Margin less required, as the two are printed, of the weakest seat of a spot, by the margin that counts.</summary>
    public static long TenthsOf(SpotScore score) => TenthsOf(score.Weakest, score.By);

    /// <summary>The words for the weakest seat of a spot, by the margin that counts.</summary>
    public static string Words(SpotScore score) => Words(score.Weakest, score.By);

    private static long TenthsOf(LinkBudget budget, DecisionMargin by) => ShownMargin.HeadroomTenths(by.MarginDb(budget), budget.RequiredDb);

    /// <summary><c>4.2 dB above</c>, <c>3.1 dB below</c>: goes before the required margin.</summary>
    public static string Words(LinkBudget budget, DecisionMargin by)
    {
        long tenths = TenthsOf(budget, by);
        return tenths switch
        {
            0 => "exactly at",
            > 0 => $"{Tenths.Show(tenths)} dB above",
            _ => $"{Tenths.Show(-tenths)} dB below",
        };
    }
}
