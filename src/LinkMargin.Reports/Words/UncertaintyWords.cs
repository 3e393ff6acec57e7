using System.Globalization;

namespace LinkMargin.Reports.Words;

/// <summary>Probabilities in words.</summary>
internal static class UncertaintyWords
{
    private const double TenthsOfAPercent = 1000;
    private const int Least = 0;
    private const int Greatest = 100;

    /// <summary><c>90 % confidence</c>, <c>99.5 % confidence</c>.</summary>
    public static string Confidence(double confidence) => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(TenthsOfAPercent * confidence) / 10:0.#} % confidence");

    /// <summary>What the margin to count on is: <c>reached with 90 % confidence</c>.</summary>
    public static string Reached(double confidence) => $"reached with {Confidence(confidence)}";

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
