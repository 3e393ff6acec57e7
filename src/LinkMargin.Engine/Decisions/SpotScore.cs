using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Decisions;

/// <summary>How good one spot is for the seats it is played from.</summary>
public sealed record SpotScore
{
    /// <summary>Scores a spot.</summary>
    /// <param name="spot">The spot.</param>
    /// <param name="budgets">Its budget with each seat it is played from, in the house's order; at least one.</param>
    /// <param name="by">The margin that counts; null for the median.</param>
    public SpotScore(Spot spot, IReadOnlyList<LinkBudget> budgets, DecisionMargin? by = null)
    {
        Spot = spot;
        Budgets = budgets;
        By = by ?? DecisionMargin.Median;
        Weakest = budgets.MinBy(By.HeadroomDb)
            ?? throw new ArgumentException("A spot is scored over at least one seat.", nameof(budgets));
        MeanHeadroomDb = budgets.Average(By.HeadroomDb);
        ILookup<bool, IGrouping<string, LinkBudget>> byVerdict = budgets.GroupBy(b => b.Seat.WrittenName).ToLookup(players => players.All(By.Passes));
        PassingSeats = [.. byVerdict[true].Select(players => players.Key)];
        FailingSeats = [.. byVerdict[false].Select(players => players.Key)];
        double passingDays = byVerdict[true].Sum(UsedDays);
        PassingShare = passingDays / (passingDays + byVerdict[false].Sum(UsedDays));
    }

    /// <summary>The spot.</summary>
    public Spot Spot { get; }

    /// <summary>Its budget with each seat it is played from, in the house's order.</summary>
    public IReadOnlyList<LinkBudget> Budgets { get; }

    /// <summary>The margin that counts.</summary>
    public DecisionMargin By { get; }

    /// <summary>The link with the least headroom: the seat that decides.</summary>
    public LinkBudget Weakest { get; }

    /// <summary>Headroom of the seat that decides, dB.</summary>
    public double WeakestHeadroomDb => By.HeadroomDb(Weakest);

    /// <summary>Mean headroom over the players, dB; orders spots that are equal at their weakest seat.</summary>
    public double MeanHeadroomDb { get; }

    /// <summary>The seats that pass with all of their players, by the names they were written with.</summary>
    public IReadOnlyList<string> PassingSeats { get; }

    /// <summary>The seats that do not pass.</summary>
    public IReadOnlyList<string> FailingSeats { get; }

    /// <summary>How many seats there are; the players of one seat count once.</summary>
    public int Seats => PassingSeats.Count + FailingSeats.Count;

    /// <summary>How many seats pass.</summary>
    public int SeatsPassing => PassingSeats.Count;

    /// <summary>The share of the playing time at seats that pass, each seat by the days it is used, 0 to 1.</summary>
    public double PassingShare { get; }

    /// <summary>Whether every seat passes.</summary>
    public bool PassesAll => FailingSeats.Count == 0;

    /// <summary>Probability that all seats pass at once, 0 to 1; null where that was not computed.</summary>
    public double? ProbabilityAllPass { get; init; }

    /// <summary>Probability that each seat passes, 0 to 1, by its name; null where that was not computed.</summary>
    public IReadOnlyDictionary<string, double>? ProbabilitiesPassing { get; init; }

    /// <summary>Probability that a seat passes, 0 to 1; null where that was not computed, or it does not play here.</summary>
    public double? ProbabilityPasses(Seat seat) => ProbabilitiesPassing?.TryGetValue(seat.Name, out double likely) == true ? likely : null;

    /// <summary>The same score under another name of the spot.</summary>
    public SpotScore Named(string name)
    {
        Spot spot = Spot with { Name = name };
        return new SpotScore(spot, [.. Budgets.Select(budget => budget with { Spot = spot })], By)
        {
            ProbabilityAllPass = ProbabilityAllPass,
            ProbabilitiesPassing = ProbabilitiesPassing,
        };
    }

    /// <summary>The budget with a seat; null where a console here is not played from it.</summary>
    public LinkBudget? With(Seat seat) => Budgets.FirstOrDefault(budget => budget.Seat.Name == seat.Name);

    /// <summary>The same over some of the seats; null where none of them plays here.</summary>
    public SpotScore? Over(Func<Seat, bool> seats)
    {
        LinkBudget[] some = [.. Budgets.Where(budget => seats(budget.Seat))];
        return some.Length == 0 ? null : new SpotScore(Spot, some, By);
    }

    private static double UsedDays(IGrouping<string, LinkBudget> players) => players.Max(b => b.Seat.UsedDays);
}
