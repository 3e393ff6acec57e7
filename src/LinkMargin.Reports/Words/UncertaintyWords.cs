using System.Globalization;

namespace LinkMargin.Reports.Words;

/// <summary>Probabilities in words.</summary>
internal static class UncertaintyWords
{
    private const double TenthsOfAPercent = 1000;
    private const int Least = 0;
    private const int Greatest = 100;

    /// <summary><c>in nine cases of ten</c>, <c>in 95 cases of 100</c>.</summary>
    public static string Often(double confidence) => Math.Round(TenthsOfAPercent * confidence) is var tenths && tenths == 900
        ? "in nine cases of ten"
        : tenths % 10 == 0
            ? string.Create(CultureInfo.InvariantCulture, $"in {tenths / 10:0} cases of 100")
            : string.Create(CultureInfo.InvariantCulture, $"in {tenths:0} cases of 1000");

    /// <summary>The same at the beginning of a sentence.</summary>
    public static string OftenFirst(double confidence) => "I" + Often(confidence)[1..];

    /// <summary><c>86 %</c>; never more than is known, so no 0 and no 100.</summary>
    public static string Likely(double probability) => Percent(probability) switch
    {
        Least => FormattableString.Invariant($"<{Least + 1} %"),
        Greatest => FormattableString.Invariant($">{Greatest - 1} %"),
        int percent => FormattableString.Invariant($"{percent} %"),
    };

    /// <summary>What <see cref="Likely"/> shows, so that figures that read the same count as the same: 0 for below 1 %, 100 for above 99 %.</summary>
    public static int Percent(double probability) => probability switch
    {
        < 0.01 => Least,
        > 0.99 => Greatest,
        _ => (int)Math.Round(100 * probability, MidpointRounding.AwayFromZero),
    };
}
