namespace LinkMargin.Files.Problems;

/// <summary>Whether a problem stops the work.</summary>
public enum Severity
{
    /// <summary>Looks odd, but can be computed.</summary>
    Odd,

    /// <summary>Must be mended first.</summary>
    Mistake,
}
