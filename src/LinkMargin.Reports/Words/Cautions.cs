namespace LinkMargin.Reports.Words;

/// <summary>What is said wherever a decision is made.</summary>
internal static class Cautions
{
    /// <summary>Figures are estimates.</summary>
    public const string Estimates =
        "These are planning estimates. Test the spot with the real console before you pull cable or make holes.";

    /// <summary>The usual cautions before work on a house; local codes and licensed people decide.</summary>
    public static IReadOnlyList<string> OfWork { get; } =
    [
        "Drilling: joists and load-bearing walls carry the house; local codes and qualified people decide about holes. Look for pipes and cables before you drill, and for asbestos before you cut old boards.",
        "Cable in cavities, through fire-resisting walls and floors, or beside mains: local codes cover its jacket, its distance and how holes are closed. Mains is for a licensed electrician.",
        "Ladders and roof spaces: follow the maker's instructions, stand on joists, and never work alone.",
        "Heat and fire: a console in a cupboard must get rid of its heat; open a side for air as much as for radio. Fire doors stay shut.",
    ];

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
