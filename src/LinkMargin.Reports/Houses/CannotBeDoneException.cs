namespace LinkMargin.Reports.Houses;

/// <summary>A command cannot do what was asked, for reasons a person can fix. It ends the command with exit code 2.</summary>
/// <param name="reasons">Why, a sentence each.</param>
internal sealed class CannotBeDoneException(params IReadOnlyList<string> reasons) : Exception(string.Join(Environment.NewLine, reasons))
{
    /// <summary>Why, a sentence each; empty where all has been said already.</summary>
    public IReadOnlyList<string> Reasons { get; } = reasons;
}
