using LinkMargin.Engine.Links;

namespace LinkMargin.Cli.Output;

/// <summary>How far a margin stands above or below what its seat asks for, in words.</summary>
internal static class Headroom
{
    /// <summary>Margin less required, as the two are printed.</summary>
    public static long TenthsOf(LinkBudget budget) => Tenths.Of(budget.MarginDb) - Tenths.Of(budget.RequiredDb);

    /// <summary><c>4.2 dB above</c>, <c>3.1 dB short of</c>: goes before what the seat asks for.</summary>
    public static string Words(LinkBudget budget)
    {
        long tenths = TenthsOf(budget);
        return (budget.Meets, tenths) switch
        {
            (true, <= 0) => "just at",
            (true, _) => $"{Tenths.Show(tenths)} dB above",
            (false, >= 0) => "less than 0.1 dB short of",
            (false, _) => $"{Tenths.Show(-tenths)} dB short of",
        };
    }
}
