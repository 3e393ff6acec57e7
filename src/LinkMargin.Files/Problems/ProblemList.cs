using System.Collections.ObjectModel;

namespace LinkMargin.Files.Problems;

/// <summary>
/// The problems of one file, up to a limit for each severity; one line then says that there are more. A person fixes what is
/// reported before trying again, and a file full of errors must not take forever to report.
/// </summary>
internal sealed class ProblemList : Collection<Problem>
{
    /// <summary>Most errors, and most warnings, that are reported.</summary>
    public const int MostReported = 500;

    private readonly Dictionary<Severity, int> reported = [];

    /// <summary>Whether further errors are no longer reported.</summary>
    public bool IsFull => reported.GetValueOrDefault(Severity.Error) > MostReported;

    /// <inheritdoc/>
    protected override void InsertItem(int index, Problem item)
    {
        int before = reported.GetValueOrDefault(item.Severity);
        if (before > MostReported)
        {
            return;
        }

        string what = item.Severity == Severity.Error ? "errors" : "warnings";
        reported[item.Severity] = before + 1;
        base.InsertItem(index, before < MostReported
            ? item
            : item with { Message = FormattableString.Invariant($"there are more than {MostReported} {what}; fix the ones above first") });
    }
}
