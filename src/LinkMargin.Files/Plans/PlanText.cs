using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans;

/// <summary>How the messages about a plan write sides and names.</summary>
internal static class PlanText
{
    /// <summary>A side of a room.</summary>
    internal static string Side(PlanSide side) => side switch
    {
        PlanSide.North => "north",
        PlanSide.East => "east",
        PlanSide.South => "south",
        _ => "west",
    };

    /// <summary>Names in quotes, the last joined by "and"; of very many only the first ones.</summary>
    internal static string List(IReadOnlyCollection<string> names)
    {
        const int MostNames = 12;
        string[] reported = [.. names.Take(MostNames).Select(Quote.Of)];
        if (names.Count > MostNames)
        {
            reported = [.. reported, FormattableString.Invariant($"{names.Count - MostNames} more")];
        }

        return reported.Length < 2 ? string.Concat(reported) : $"{string.Join(", ", reported[..^1])} and {reported[^1]}";
    }
}
