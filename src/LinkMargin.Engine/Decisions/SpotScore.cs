using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Decisions;

/// <summary>How one spot serves all seats.</summary>
/// <param name="Spot">The spot.</param>
/// <param name="Budgets">Its budget with each seat, in the house's order.</param>
public sealed record SpotScore(Spot Spot, IReadOnlyList<LinkBudget> Budgets)
{
    /// <summary>The link with the least headroom: the seat that decides.</summary>
    public LinkBudget Worst { get; } = Budgets.MinBy(b => b.HeadroomDb)
        ?? throw new ArgumentException("A spot is scored over at least one seat.", nameof(Budgets));

    /// <summary>How many seats have the margin they ask for.</summary>
    public int SeatsMet { get; } = Budgets.Count(b => b.Meets);

    /// <summary>Mean headroom over the seats, dB; parts spots that are equal at their worst seat.</summary>
    public double MeanHeadroomDb { get; } = Budgets.Average(b => b.HeadroomDb);
}
