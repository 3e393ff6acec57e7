using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Plans.Drafts;

/// <summary>Collects the errors and warnings about the plans of one file.</summary>
/// <param name="file">The file as the person named it.</param>
/// <param name="problems">Everything found so far.</param>
/// <param name="lengths">How the file writes lengths.</param>
internal sealed class PlanProblems(string file, ICollection<Problem> problems, LengthFormat lengths)
{
    private readonly Dictionary<string, int> reported = [];

    /// <summary>How messages write lengths.</summary>
    internal LengthFormat Lengths { get; } = lengths;

    /// <summary>Reports something that must be fixed.</summary>
    internal void Error(Mark mark, string message) => problems.Add(new Problem(file, mark, Severity.Error, message));

    /// <summary>Reports something that looks wrong.</summary>
    internal void Warning(Mark mark, string message) => problems.Add(new Problem(file, mark, Severity.Warning, message));

    /// <summary>
    /// Reports one problem of a kind that can come in thousands: after <see cref="PlanLimits.MostOfAKind"/> of them one line says
    /// that there are more, and the rest are not reported.
    /// </summary>
    internal void OneOfMany(Severity severity, string kind, Mark mark, string message)
    {
        int before = reported.GetValueOrDefault(kind);
        reported[kind] = before + 1;
        if (before <= PlanLimits.MostOfAKind)
        {
            string text = before < PlanLimits.MostOfAKind ? message : $"there are more {kind}; fix the ones above first";
            problems.Add(new Problem(file, mark, severity, text));
        }
    }

    /// <summary>Whether so many of a kind were reported that searching for more is pointless.</summary>
    internal bool HasReportedEnough(string kind) => reported.GetValueOrDefault(kind) > PlanLimits.MostOfAKind;
}

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

    /// <summary>Names in quotes, the last joined by "and"; of a long list only the first ones.</summary>
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
