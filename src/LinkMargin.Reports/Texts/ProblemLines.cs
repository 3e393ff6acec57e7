using LinkMargin.Files.Problems;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Texts;

/// <summary>What is wrong or odd in a file, a message each.</summary>
internal static class ProblemLines
{
    /// <summary>Writes them.</summary>
    /// <param name="problems">What is wrong or odd.</param>
    /// <param name="output">Where to.</param>
    /// <param name="width">How wide it may be.</param>
    public static void Write(IEnumerable<Problem> problems, TextWriter output, int width)
    {
        foreach (Problem problem in problems)
        {
            WordWrap.WriteMessage(problem.Severity == Severity.Warning ? $"{problem} (odd, but can be computed)" : problem.ToString(), output, width);
        }
    }

    /// <summary>Says that a file must be mended before anything is computed.</summary>
    public static string FixFirst(string file, IReadOnlyList<Problem> problems)
    {
        int mistakes = problems.Count(p => p.Severity == Severity.Error);
        return FormattableString.Invariant($"{file} holds {mistakes} mistake{(mistakes == 1 ? "" : "s")}, named above; mend {(mistakes == 1 ? "it" : "them")} first");
    }
}
