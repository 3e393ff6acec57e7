using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Decisions;

/// <summary>How one spot serves all seats.</summary>
/// <param name="Spot">The spot.</param>
/// <param name="Budgets">Its budget with each seat it is played from, in the house's order.</param>
public sealed record SpotScore(Spot Spot, IReadOnlyList<LinkBudget> Budgets)
{
    /// <summary>The link with the least headroom: the seat that decides.</summary>
    public LinkBudget Worst { get; } = Budgets.MinBy(b => b.HeadroomDb)
        ?? throw new ArgumentException("A spot is scored over at least one seat.", nameof(Budgets));

    /// <summary>How many seats there are; the players of one seat count once.</summary>
    public int Seats { get; } = Grouped(Budgets).Count();

    /// <summary>How many seats have the margin they ask for, each of their players.</summary>
    public int SeatsMet { get; } = Grouped(Budgets).Count(IsMet);

    /// <summary>The share of the play that is met, each seat by the days it is used, 0 to 1.</summary>
    public double MetShare { get; } = Grouped(Budgets).Where(IsMet).Sum(UsedDays) / Grouped(Budgets).Sum(UsedDays);

    /// <summary>Mean headroom over the players, dB; parts spots that are equal at their worst seat.</summary>
    public double MeanHeadroomDb { get; } = Budgets.Average(b => b.HeadroomDb);

    /// <summary>The budget with a seat; null where a console here is not played from it.</summary>
    public LinkBudget? With(Seat seat) => Budgets.FirstOrDefault(budget => budget.Seat.Name == seat.Name);

    private static IEnumerable<IGrouping<string, LinkBudget>> Grouped(IEnumerable<LinkBudget> budgets) =>
        budgets.GroupBy(b => b.Seat.WrittenName);

    private static bool IsMet(IGrouping<string, LinkBudget> players) => players.All(b => b.Meets);

    private static double UsedDays(IGrouping<string, LinkBudget> players) => players.Max(b => b.Seat.UsedDays);
}
