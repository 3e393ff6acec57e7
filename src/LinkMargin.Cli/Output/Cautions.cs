namespace LinkMargin.Cli.Output;

/// <summary>What is said wherever a decision is made.</summary>
internal static class Cautions
{
    /// <summary>Figures are estimates.</summary>
    public const string Estimates =
        "These figures are estimates for planning: try the place with the real console before a cable is pulled or a hole is made.";
}
