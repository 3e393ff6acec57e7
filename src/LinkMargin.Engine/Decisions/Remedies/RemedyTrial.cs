using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>Computes a spot's score in an edited house.</summary>
internal sealed class RemedyTrial
{
    private readonly LinkModel model;
    private readonly ISpotJudge judge;
    private readonly double undecidedDb;
    private readonly SpotScore medianBefore;
    private readonly Lazy<BackwardSurvey> survey;

    /// <summary>
    /// How much more a remedy may gain by the margin that counts than by the median, dB. One that gains so little by the median that even
    /// this would not make it worth reporting is not drawn.
    /// </summary>
    internal const double UndecidedDb = 0.4;

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
            model = model.Of(house, model.Occupied);
        }

        (House, this.model, Spot, this.judge, this.undecidedDb) = (house, model, spot, judge, undecidedDb);
        Before = judge.Score(model, spot, SeatsIn(house));
        medianBefore = new SpotScore(spot, Before.Budgets);
        survey = new(() => new BackwardSurvey(model, [.. Before.Budgets.Select(budget => budget.Seat)]));
    }

    /// <summary>The house as it is.</summary>
    public House House { get; }

    /// <summary>The spot as it is.</summary>
    public Spot Spot { get; }

    /// <summary>Its score as things are.</summary>
    public SpotScore Before { get; }

    /// <summary>The weakest seat as things are.</summary>
    public Seat WeakestSeat => Before.Weakest.Seat;

    /// <summary>What some remedies gain; only by the median where that is almost nothing; null where no seat is left.</summary>
    public RemedyResult? Result(params IReadOnlyList<Remedy> remedies)
    {
        House edited = remedies.Aggregate(House, (house, remedy) => remedy.ApplyTo(house));
        Spot spot = edited.Spots.First(s => s.Name == Spot.Name);
        Seat[] seats = SeatsIn(edited);
        if (seats.Length == 0)
        {
            return null;
        }

        LinkModel ready = ModelOf(edited);
        RemedyResult byMedian = Gain(remedies, medianBefore, MedianJudge.Instance.Score(ready, spot, BudgetsOf(ready, spot, seats)));
        return CouldHelp(byMedian) ? Gain(remedies, Before, judge.Score(ready, spot, byMedian.After.Budgets)) : byMedian;
    }

    // Where house and spot are as before, so are the links of all seats but those that are changed.
    private LinkBudget[] BudgetsOf(LinkModel ready, Spot spot, Seat[] seats)
    {
        IReadOnlyList<LinkBudget> known = ready == model && spot == Spot ? Before.Budgets : [];
        Dictionary<Seat, LinkBudget> budgets = known.ToDictionary(budget => budget.Seat);
        foreach (LinkBudget budget in LinkEvaluation.Budgets(ready, spot, seats.Where(seat => !budgets.ContainsKey(seat))))
        {
            budgets.Add(budget.Seat, budget);
        }

        return [.. seats.Select(seat => budgets[seat])];
    }

    private RemedyResult Gain(IReadOnlyList<Remedy> remedies, SpotScore before, SpotScore after)
    {
        double? atSeat = after.With(WeakestSeat) is { } budget ? after.By.HeadroomDb(budget) - before.By.HeadroomDb(before.With(WeakestSeat)!) : null;
        return new RemedyResult(remedies, after, after.WeakestHeadroomDb - before.WeakestHeadroomDb, atSeat)
        {
            ProbabilityAtSeat = after.ProbabilityPasses(WeakestSeat),
        };
    }

    private bool CouldHelp(RemedyResult byMedian) => byMedian.GainAtSeatDb is not { } atSeatDb
        || Math.Max(byMedian.GainDb, atSeatDb) + undecidedDb >= ImproveRequest.LeastGainDb;

    // The edited house with the people in its seats, as far as those seats are still there.
    private LinkModel ModelOf(House edited)
    {
        Seat[] people = [.. edited.Seats.Where(seat => model.Occupied.Any(other => other.Name == seat.Name))];
        bool isSame = people.Length == 0
            && ReferenceEquals(edited.Levels, House.Levels)
            && ReferenceEquals(edited.Fixtures, House.Fixtures)
            && edited.Controller == House.Controller
            && edited.Console == House.Console;
        return isSame && model.Occupied.Count == 0 ? model : model.Of(edited, people);
    }

    /// <summary>The best of some places for the console's radio, by links computed backwards; null where there are none.</summary>
    public Standing? BestOf(IReadOnlyList<Standing> places)
    {
        if (places.Count == 0)
        {
            return null;
        }

        // By the median the best is among the first few.
        const int Judged = 4;
        double[] medianDb = survey.Value.WeakestHeadroomDb(places);
        Standing[] first = [.. Enumerable.Range(0, places.Count).OrderByDescending(i => medianDb[i]).Take(Judged).Select(i => places[i])];
        double[] headroomDb = judge.WeakestHeadroomDb(model, survey.Value.Store(first), survey.Value.Seats, [.. first.Select(survey.Value.PointOf)]);
        return first[Array.IndexOf(headroomDb, headroomDb.Max())];
    }

    private Seat[] SeatsIn(House house) => [.. house.Seats.Where(seat => seat.IsPlayedAt(Spot))];
}

/// <summary>One remedy or two together, computed.</summary>
/// <param name="Remedies">One or two.</param>
/// <param name="After">The spot's score then.</param>
/// <param name="GainDb">How much more headroom its weakest seat then has, dB; the weakest seat may be another then.</param>
/// <param name="GainAtSeatDb">The same at the seat that was weakest before, dB; null where that seat is on a cable.</param>
public sealed record RemedyResult(IReadOnlyList<Remedy> Remedies, SpotScore After, double GainDb, double? GainAtSeatDb)
{
    /// <summary>Probability that the seat that was weakest before then passes, 0 to 1; null where not computed or the seat is on a cable.</summary>
    public double? ProbabilityAtSeat { get; init; }

    /// <summary>Other variants of a single remedy, the greatest gain first; each has the spot's score then, like this one.</summary>
    public IReadOnlyList<RemedyResult> Alternatives { get; init; } = [];

    /// <summary>The greatest effort of any of them.</summary>
    public Effort Effort => Remedies.Max(remedy => remedy.Effort);
}
