namespace LinkMargin.Reports.Words;

/// <summary>What is said wherever a decision is made.</summary>
internal static class Cautions
{
    /// <summary>Figures are estimates.</summary>
    public const string Estimates =
        "These are planning estimates. Test the spot with the real console before you pull cable or make holes.";

    // More links than this with one caution are counted.
    private const int MostNamed = 3;

    /// <summary>A line for each caution about figures that decide; those with the same one share its line.</summary>
    /// <param name="figures">What each figure is of, and its cautions.</param>
    public static IEnumerable<string> About(IEnumerable<(string Of, IReadOnlyList<string> Cautions)> figures) =>
        from figure in figures
        from caution in figure.Cautions
        group figure.Of by caution into alike
        let names = alike.Distinct().ToArray()
        let others = names.Length - MostNamed
        select $"Caution about {string.Join(", ", names.Take(MostNamed))}{(others > 0 ? FormattableString.Invariant($" and {others} more") : "")}: {alike.Key}.";
}
