using System.Numerics;

namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>
/// Groups variants of one remedy: the sides of one rack, the panels they could be made of, the lengths of a lead, the classes of
/// controller. One of them stands for all, the others are its alternatives.
/// </summary>
internal static class RemedyVariants
{
    // Gains are reported to a tenth; a smaller difference does not count.
    private const int Decimals = 1;

    /// <summary>One result for each remedy, in no order.</summary>
    /// <param name="results">Single remedies, computed.</param>
    /// <param name="isEnough">Whether a result is enough by itself: of several that are, the smallest stands for all.</param>
    public static IEnumerable<RemedyResult> Merged(IEnumerable<RemedyResult> results, Func<RemedyResult, bool> isEnough) =>
        from result in results
        group result by Family(result.Remedies[0]) into variants
        select Merged([.. variants], isEnough);

    private static RemedyResult Merged(RemedyResult[] variants, Func<RemedyResult, bool> isEnough)
    {
        RemedyResult[] byGain =
        [
            .. variants.OrderByDescending(Gain).ThenBy(Size).ThenByDescending(result => result.GainAtSeatDb).ThenByDescending(result => result.GainDb),
        ];
        RemedyResult best = byGain.Where(isEnough).OrderBy(Size).FirstOrDefault(byGain[0]);
        return best with
        {
            Alternatives = [.. byGain.Where(other => other != best && !(Size(other) > Size(best) && Gain(other) <= Gain(best)))],
        };
    }

    private static object Family(Remedy remedy) => remedy.Kind switch
    {
        RemedyKind.OpenSide or RemedyKind.SwapSide => (remedy.Kind, remedy.Thing),
        RemedyKind.Lead or RemedyKind.Controller => remedy.Kind,
        _ => remedy,
    };

    private static double Gain(RemedyResult result) => Math.Round(result.GainDb, Decimals);

    // Metres of a lead, sides of a rack.
    private static double Size(RemedyResult result) =>
        result.Remedies[0].LengthMetres ?? BitOperations.PopCount((uint)result.Remedies[0].Side);
}
