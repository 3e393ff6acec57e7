namespace LinkMargin.Reports.Houses;

/// <summary>A command cannot do what was requested, for reasons a person can fix. It ends the command with exit code 2.</summary>
/// <param name="reasons">The reasons, one sentence each.</param>
internal sealed class CannotBeDoneException(params IReadOnlyList<string> reasons) : Exception(string.Join(Environment.NewLine, reasons))
{
    /// <summary>The reasons, one sentence each; empty if they were already reported.</summary>
    public IReadOnlyList<string> Reasons { get; } = reasons;
}
