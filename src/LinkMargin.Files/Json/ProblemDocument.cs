using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Json;

/// <summary>One thing wrong or odd in a file, as JSON.</summary>
/// <param name="File">The file.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
/// <param name="IsMistake">Whether it must be mended; otherwise it looks odd.</param>
/// <param name="Message">What is wrong and what to do.</param>
public sealed record ProblemDocument(string File, int Line, int Column, bool IsMistake, string Message)
{
    internal static ProblemDocument From(Problem problem) =>
        new(problem.File, problem.Mark.Line, problem.Mark.Column, problem.Severity == Severity.Mistake, problem.Message);
}
