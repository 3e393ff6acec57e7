namespace LinkMargin.Files.Problems;

/// <summary>One thing wrong or suspicious in a file a person wrote.</summary>
/// <param name="File">The file as the person named it.</param>
/// <param name="Mark">Its position in the file.</param>
/// <param name="Severity">Whether it stops the computation.</param>
/// <param name="Message">One sentence: the value, what is allowed, what to do.</param>
public sealed record Problem(string File, Mark Mark, Severity Severity, string Message)
{
    /// <summary><c>file:line:column: message</c>.</summary>
    public override string ToString() => Quote.Line(FormattableString.Invariant($"{File}:{Mark.Line}:{Mark.Column}: {Message}"));
}

/// <summary>Whether a problem stops the computation.</summary>
public enum Severity
{
    /// <summary>Looks wrong, but can be computed.</summary>
    Warning,

    /// <summary>Must be fixed first.</summary>
    Error,
}

/// <summary>A position in a text file; both numbers count from 1.</summary>
/// <param name="Line">Line.</param>
/// <param name="Column">Column, in characters.</param>
public readonly record struct Mark(int Line, int Column);
