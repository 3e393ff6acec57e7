namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>What a remedy asks of somebody, least first.</summary>
public enum Effort
{
    /// <summary>Nothing to buy and nothing to build.</summary>
    Free,

    /// <summary>Something to carry or to put up.</summary>
    Small,

    /// <summary>Something to buy.</summary>
    Buy,

    /// <summary>Something to buy and a cable to lay.</summary>
    Cable,
}
