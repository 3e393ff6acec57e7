namespace LinkMargin.Reports.Words;

/// <summary>A number with what it counts.</summary>
internal static class Plural
{
    /// <summary>One hole, two holes.</summary>
    public static string Of(int number, string one) => FormattableString.Invariant($"{number} {one}{(number == 1 ? "" : "s")}");
}
