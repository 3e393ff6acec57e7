using System.Globalization;

namespace LinkMargin.Cli.Output;

/// <summary>How sure something is, in words.</summary>
internal static class DoubtWords
{
    private const double TenthsOfAPercent = 1000;

    /// <summary><c>nine times in ten</c>, <c>95 times in 100</c>.</summary>
    public static string Often(double confidence) => Math.Round(TenthsOfAPercent * confidence) is var tenths && tenths == 900
        ? "nine times in ten"
        : tenths % 10 == 0
            ? string.Create(CultureInfo.InvariantCulture, $"{tenths / 10:0} times in 100")
            : string.Create(CultureInfo.InvariantCulture, $"{tenths:0} times in 1000");

    /// <summary><c>86 %</c>; never more than is known, so no 0 and no 100.</summary>
    public static string Likely(double probability) => probability switch
    {
        < 0.01 => "<1 %",
        > 0.99 => ">99 %",
        _ => string.Create(CultureInfo.InvariantCulture, $"{100 * probability:0} %"),
    };
}
