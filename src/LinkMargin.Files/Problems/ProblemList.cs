using System.Collections.ObjectModel;

namespace LinkMargin.Files.Problems;

/// <summary>
/// The problems of one file, up to a limit of each severity; one line then says that there are more. A person mends what
/// is told before asking again, and a file of nothing but faults must not take for ever to tell.
/// </summary>
internal sealed class ProblemList : Collection<Problem>
{
    /// <summary>Most mistakes, and most odd things, that are told.</summary>
    public const int MostTold = 500;

    private readonly Dictionary<Severity, int> told = [];

    /// <summary>Whether further mistakes will not be told.</summary>
    public bool IsFull => told.GetValueOrDefault(Severity.Mistake) > MostTold;

    /// <inheritdoc/>
    protected override void InsertItem(int index, Problem item)
    {
        int before = told.GetValueOrDefault(item.Severity);
        if (before > MostTold)
        {
            return;
        }

        string what = item.Severity == Severity.Mistake ? "mistakes" : "odd things";
        told[item.Severity] = before + 1;
        base.InsertItem(index, before < MostTold
            ? item
            : item with { Message = FormattableString.Invariant($"there are more than {MostTold} {what}; mend the ones told first") });
    }
}
