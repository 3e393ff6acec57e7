using System.Collections.Concurrent;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>Computes a spot's score in an edited house.</summary>
internal sealed class RemedyTrial
{
    /// <summary>
    /// How much more a link may gain by the margin that counts than by the median, dB. What gains so little by the median that even
    /// this would not make it worth reporting, or the best of its kind, is not drawn.
    /// </summary>
    internal const double UndecidedDb = 0.4;

    // A link that gains much may leave behind a wall whose loss is uncertain: this share of the gain is undecided too.
    private const double UndecidedShare = 0.2;

    private readonly LinkModel model;
    private readonly ISpotJudge judge;
    private readonly double undecidedDb;
    private readonly LinkBudget[] weakestFirst; // as things are

    // As long as only seats, spot and radios change, many remedies have links in common.
    private readonly ConcurrentDictionary<(Spot Spot, Seat Seat), LinkBudget> known = [];
    private readonly ConcurrentDictionary<Spot, Spot> spots = [];
    private readonly ConcurrentDictionary<RadioPair, LinkModel> withRadios = [];

    /// <summary>Prepares to try edits of a house.</summary>
    /// <param name="house">The house, without people.</param>
    /// <param name="model">The model of the house, with the people in its seats.</param>
    /// <param name="spot">The spot.</param>
    /// <param name="judge">Says how good a spot is.</param>
    /// <param name="undecidedDb">As <see cref="UndecidedDb"/>.</param>
    public RemedyTrial(House house, LinkModel model, Spot spot, ISpotJudge judge, double undecidedDb = UndecidedDb)
    {
        // What is tried elsewhere in the house is the console of this spot.
        if (spot.Radio is { } radio && radio != house.Console)
        {
            house = house with { Console = radio };
            model = model.With(radio, house.Controller);
        }

        (House, this.model, Spot, this.judge, this.undecidedDb) = (house, model, spot, judge, undecidedDb);
        Before = judge.Score(model, spot, SeatsIn(house));
        weakestFirst = [.. Before.Budgets.OrderBy(Before.By.HeadroomDb)];
        spots.TryAdd(spot, spot);
        foreach (LinkBudget budget in Before.Budgets)
        {
            known.TryAdd((spot, budget.Seat), budget);
        }
    }

    /// <summary>The house as it is.</summary>
    public House House { get; }

    /// <summary>The spot as it is.</summary>
    public Spot Spot { get; }

    /// <summary>Its score as things are.</summary>
    public SpotScore Before { get; }

    /// <summary>The weakest seat as things are.</summary>
    public Seat WeakestSeat => Before.Weakest.Seat;

    /// <summary>
    /// How much some remedies could gain; null where no seat is left. Seats are computed by the median, the weakest first, until it is certain
    /// that the remedies gain too little.
    /// </summary>
    /// <param name="remedies">What is tried.</param>
    /// <param name="leastDb">What they must gain, dB.</param>
    /// <param name="isSeatEnough">Whether it is enough that the seat that is the weakest now gains as much, or no longer counts.</param>
    public RemedyOutlook? LookAt(IReadOnlyList<Remedy> remedies, double leastDb, bool isSeatEnough)
    {
        House edited = remedies.Aggregate(House, (house, remedy) => remedy.ApplyTo(house));
        Spot spot = edited.Spots.First(s => s.Name == Spot.Name);
        spot = spots.GetOrAdd(spot, spot);
        Seat[] seats = SeatsIn(edited);
        if (seats.Length == 0)
        {
            return null;
        }

        LinkModel ready = ModelOf(edited);
        var budgets = new Dictionary<string, LinkBudget>();
        double mostDb = double.PositiveInfinity;
        foreach (LinkBudget before in weakestFirst)
        {
            if (Array.Find(seats, seat => seat.Name == before.Seat.Name) is not { } seat)
            {
                continue;
            }

            LinkBudget after = BudgetOf(ready, spot, seat);
            budgets.Add(seat.Name, after);
            mostDb = Math.Min(mostDb, Before.By.HeadroomDb(before) + MostGainDb(before, after.HeadroomDb) - Before.WeakestHeadroomDb);
            if (mostDb < leastDb && (!isSeatEnough || seat.Name == WeakestSeat.Name))
            {
                return new RemedyOutlook(remedies, mostDb, null, null);
            }
        }

        return new RemedyOutlook(remedies, mostDb, new SpotScore(spot, [.. seats.Select(seat => budgets[seat.Name])]), ready);
    }

    /// <summary>What they gain.</summary>
    public RemedyResult Result(RemedyOutlook outlook)
    {
        if (outlook is not { ByMedian: { } byMedian, Model: { } ready })
        {
            return Result(LookAt(outlook.Remedies, double.NegativeInfinity, true)!);
        }

        SpotScore after = judge.Score(ready, byMedian.Spot, byMedian.Budgets);
        double? atSeat = after.With(WeakestSeat) is { } budget ? after.By.HeadroomDb(budget) - Before.WeakestHeadroomDb : null;
        return new RemedyResult(outlook.Remedies, after, after.WeakestHeadroomDb - Before.WeakestHeadroomDb, atSeat)
        {
            ProbabilityAtSeat = after.ProbabilityPasses(WeakestSeat),
        };
    }

    /// <summary>Whether a seat could gain enough to be reported, from its headroom by the median as things are and then.</summary>
    public bool CouldHelp(Seat seat, double thenDb) => MostGainDb(Before.With(seat)!, thenDb) >= ImproveRequest.LeastGainDb;

    /// <summary>The model of the house as it is.</summary>
    public LinkModel Model => model;

    /// <summary>Says how good a spot is.</summary>
    public ISpotJudge Judge => judge;

    private double MostGainDb(LinkBudget before, double thenDb)
    {
        double gainDb = thenDb - before.HeadroomDb;
        return gainDb + undecidedDb + (UndecidedShare * Math.Max(0, gainDb));
    }

    private LinkBudget BudgetOf(LinkModel ready, Spot spot, Seat seat)
    {
        if (ready.Paths != model.Paths)
        {
            return LinkEvaluation.Budget(ready, spot, seat);
        }

        LinkBudget budget = known.GetOrAdd((spot, seat), link => LinkEvaluation.Budget(model, link.Spot, link.Seat));
        return ready == model ? budget : LinkEvaluation.With(budget, ready.RadiosAt(spot));
    }

    // The edited house with the people in its seats, as far as those seats are still there.
    private LinkModel ModelOf(House edited)
    {
        Seat[] people = [.. edited.Seats.Where(seat => model.Occupied.Any(other => other.Name == seat.Name))];
        bool hasSamePaths = people.SequenceEqual(model.Occupied)
            && ReferenceEquals(edited.Levels, House.Levels)
            && ReferenceEquals(edited.Fixtures, House.Fixtures);
        var radios = new RadioPair(edited.Console, edited.Controller);
        return !hasSamePaths ? model.Of(edited, people)
            : radios == model.Radios ? model
            : withRadios.GetOrAdd(radios, pair => model.With(pair.Console, pair.Controller));
    }

    private Seat[] SeatsIn(House house) => [.. house.Seats.Where(seat => seat.IsPlayedAt(Spot))];
}
