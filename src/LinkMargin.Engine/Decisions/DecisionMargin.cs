using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Decisions;

/// <summary>
/// The margin of a link that a decision counts on. Everything that ranks, places or improves asks here, so that what is
/// counted on can change in one place.
/// </summary>
/// <param name="Words">What it is, such as <c>median margin</c>.</param>
/// <param name="MarginDb">The margin to count on, dB.</param>
public sealed record DecisionMargin(string Words, Func<LinkBudget, double> MarginDb)
{
    /// <summary>The median: as likely too high as too low.</summary>
    public static DecisionMargin Median { get; } = new("median margin", budget => budget.MarginDb);

    /// <summary>The margin to count on less what the seat requires, dB.</summary>
    public double HeadroomDb(LinkBudget budget) => MarginDb(budget) - budget.RequiredDb;

    /// <summary>Whether the margin to count on is at least what the seat requires.</summary>
    public bool Passes(LinkBudget budget) => HeadroomDb(budget) >= 0;
}
