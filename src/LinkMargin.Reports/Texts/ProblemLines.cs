using LinkMargin.Files.Problems;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Texts;

/// <summary>The errors and warnings of a file, one message each.</summary>
internal static class ProblemLines
{
    /// <summary>Writes them.</summary>
    /// <param name="problems">Errors and warnings.</param>
    /// <param name="output">Where to write.</param>
    /// <param name="width">The greatest width.</param>
    public static void Write(IEnumerable<Problem> problems, TextWriter output, int width)
    {
        foreach (Problem problem in problems)
        {
            WordWrap.WriteMessage(problem.Severity == Severity.Warning ? $"{problem} (warning)" : problem.ToString(), output, width);
        }
    }

    /// <summary>A sentence that the errors of a file must be fixed first.</summary>
    public static string FixFirst(string file, IReadOnlyList<Problem> problems)
    {
        int errors = problems.Count(p => p.Severity == Severity.Error);
        return FormattableString.Invariant($"{file}: {errors} error{(errors == 1 ? "" : "s")} (above). Fix {(errors == 1 ? "it" : "them")} and run again");
    }
}
