namespace LinkMargin.Files.Problems;

/// <summary>Whether a problem stops the work.</summary>
public enum Severity
{
    /// <summary>Looks wrong, but can be computed.</summary>
    Warning,

    /// <summary>Must be corrected first.</summary>
    Error,
}
