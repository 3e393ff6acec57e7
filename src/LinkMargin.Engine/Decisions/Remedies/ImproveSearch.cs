using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>Computes what would help a spot: each remedy, and pairs where one is not enough, by running the model again.</summary>
public sealed class ImproveSearch
{
    // Pairs are made from this many of the best, of different kinds.
    private const int PairedFrom = 8;
    private const int MostPairs = 5;

    private readonly RemedyTrial trial;
    private readonly ImproveRequest request;

    /// <summary>Prepares a search.</summary>
    /// <param name="house">The house, without people.</param>
    /// <param name="model">The model of the house, with the people in its seats.</param>
    /// <param name="request">What to improve, and what with.</param>
    /// <param name="judge">Says how good a spot is; null for the median.</param>
    public ImproveSearch(House house, LinkModel model, ImproveRequest request, ISpotJudge? judge = null)
    {
        this.request = request;
        trial = new RemedyTrial(house, model, request.Spot, judge ?? MedianJudge.Instance);
    }

    /// <summary>The same with another limit than <see cref="RemedyTrial.UndecidedDb"/>.</summary>
    internal ImproveSearch(House house, LinkModel model, ImproveRequest request, ISpotJudge judge, double undecidedDb)
    {
        this.request = request;
        trial = new RemedyTrial(house, model, request.Spot, judge, undecidedDb);
    }

    /// <summary>Searches.</summary>
    /// <param name="progress">Receives the share done, 0 to 1, from any thread; null to hear nothing.</param>
    /// <param name="cancellation">Stops the work.</param>
    public ImproveResult Run(Action<double>? progress = null, CancellationToken cancellation = default)
    {
        var nearby = new NearbyPlaces(trial);
        Remedy[] remedies =
        [
            .. ConsoleRemedies.Leads(trial, nearby),
            .. EnclosureRemedies.All(trial, request.Panels),
            .. ConsoleRemedies.Raised(trial),
            .. ConsoleRemedies.Shelves(trial, nearby),
            .. SeatRemedies.All(trial, request.Leads),
            .. HouseRemedies.Doors(trial.House),
            .. HouseRemedies.Controllers(trial.House, request.Controllers),
        ];
        cancellation.ThrowIfCancellationRequested();
        RemedyOutlook[] outlooks = LookAt([.. remedies.Select(remedy => (IReadOnlyList<Remedy>)[remedy])], ImproveRequest.LeastGainDb, true, progress, cancellation);
        RemedyResult[] helpful = [.. BestOfEach(outlooks, cancellation).Where(Helps)];
        IEnumerable<RemedyResult> worthTelling = helpful.Where(result => IsWorthTelling(result, helpful));
        RemedyResult[] single = [.. InOrder(RemedyVariants.Merged(worthTelling, result => !trial.Before.PassesAll && result.After.PassesAll))];

        // Two must gain more than the best of one.
        double least = Math.Max(0, single.Select(result => result.GainDb).DefaultIfEmpty(0).Max()) + ImproveRequest.LeastGainDb;
        RemedyOutlook[] pairs = [];
        if (!trial.Before.PassesAll && !single.Any(result => result.After.PassesAll))
        {
            RemedyResult[] best = [.. single.OrderByDescending(ForPairs).Take(PairedFrom)];
            IEnumerable<IReadOnlyList<Remedy>> sets = from a in best from b in best where IsPair(a, b) select (IReadOnlyList<Remedy>)[a.Remedies[0], b.Remedies[0]];
            pairs = LookAt([.. sets], least, false, progress, cancellation);
        }

        return new ImproveResult(
            trial.Before,
            [.. single.Where(IsNoLoss)],
            [.. Best(pairs.Where(pair => pair.CouldHelp), MostPairs, cancellation).Where(pair => pair.GainDb > least)],
            remedies.Length + pairs.Length);
    }

    private RemedyOutlook[] LookAt(
        IReadOnlyList<Remedy>[] sets, double leastDb, bool isSeatEnough, Action<double>? progress, CancellationToken cancellation)
    {
        var found = new RemedyOutlook?[sets.Length];
        int done = 0;
        Parallel.For(0, sets.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            found[i] = trial.LookAt(sets[i], leastDb, isSeatEnough);
            progress?.Invoke((double)Interlocked.Increment(ref done) / sets.Length);
        });
        return [.. found.OfType<RemedyOutlook>()];
    }

    /// <summary>
    /// The best of several that do the same with other figures (heights, turns, lengths of lead); a longer lead only where it gains
    /// more than the next shorter one. Where none could help, none is the best.
    /// </summary>
    private IEnumerable<RemedyResult> BestOfEach(IEnumerable<RemedyOutlook> outlooks, CancellationToken cancellation)
    {
        RemedyOutlook[][] groups =
        [
            .. outlooks.GroupBy(outlook => Alike(outlook.Remedies[0])).Select(alike => alike.ToArray()).Where(alike => Array.Exists(alike, one => one.CouldHelp)),
        ];
        var results = new RemedyResult[groups.Length][];
        Parallel.For(0, groups.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
            results[i] = groups[i][0].Remedies[0].Kind == RemedyKind.Lead ? [.. LeadsWorthTheirLength(groups[i])] : [.. Best(groups[i], 1, cancellation)]);
        return results.SelectMany(some => some);
    }

    private IEnumerable<RemedyResult> LeadsWorthTheirLength(RemedyOutlook[] leads)
    {
        double most = 0;
        foreach (RemedyOutlook lead in leads.Where(lead => lead.CouldHelp).OrderBy(lead => lead.Remedies[0].LengthMetres))
        {
            if (lead.MostGainDb >= most + ImproveRequest.LeastGainDb && trial.Result(lead) is var result && result.GainDb >= most + ImproveRequest.LeastGainDb)
            {
                most = result.GainDb;
                yield return result;
            }
        }
    }

    // The best few, best first. Those that could gain most are computed first, so that the rest need not be.
    private IEnumerable<RemedyResult> Best(IEnumerable<RemedyOutlook> outlooks, int most, CancellationToken cancellation)
    {
        var found = new List<(int Place, RemedyResult Result)>();
        foreach ((RemedyOutlook outlook, int place) in outlooks.Select((outlook, place) => (outlook, place)).OrderByDescending(one => one.outlook.MostGainDb))
        {
            if (found.Count >= most && Tenths(outlook.MostGainDb) < found.Select(one => Tenths(one.Result.GainDb)).OrderDescending().ElementAt(most - 1))
            {
                break;
            }

            cancellation.ThrowIfCancellationRequested();
            found.Add((place, trial.Result(outlook)));
        }

        return InOrder(found.OrderBy(one => one.Place).Select(one => one.Result)).Take(most);
    }

    private static object Alike(Remedy remedy) => remedy.Kind switch
    {
        RemedyKind.OpenSide or RemedyKind.SwapSide or RemedyKind.OpenDoor or RemedyKind.Controller or RemedyKind.Shelf =>
            (remedy.Kind, remedy.Thing, remedy.LevelIndex, remedy.Side, remedy.Material),
        _ => remedy.Kind,
    };

    // The greatest gain first, to a tenth; among equals the least effort, then what helps the weakest seat most.
    private static IEnumerable<RemedyResult> InOrder(IEnumerable<RemedyResult> results) => results
        .OrderByDescending(result => Tenths(result.GainDb))
        .ThenBy(result => result.Effort)
        .ThenByDescending(result => result.GainAtSeatDb ?? double.PositiveInfinity)
        .ThenByDescending(result => result.GainDb);

    private static double Tenths(double gainDb) => Math.Round(gainDb, 1);

    private static bool Helps(RemedyResult result) =>
        result.GainDb >= ImproveRequest.LeastGainDb || result.GainAtSeatDb is null || result.GainAtSeatDb >= ImproveRequest.LeastGainDb;

    // A remedy that helps the weakest seat but makes another one even weaker is useful only in a pair, unless more seats pass.
    private bool IsNoLoss(RemedyResult result) =>
        result.GainDb > -ImproveRequest.LeastGainDb || result.After.SeatsPassing > trial.Before.SeatsPassing;

    // Another panel is the second best, which keeps a side closed. Where leaving the side open does not help, the gain computed for a
    // panel comes from what it reflects, and that is no reason to buy one.
    private static bool IsWorthTelling(RemedyResult result, RemedyResult[] helpful) => result.Remedies[0] is not { Kind: RemedyKind.SwapSide } swap
        || helpful.Any(other => other.Remedies[0] is { Kind: RemedyKind.OpenSide } open && (open.Thing, open.Side) == (swap.Thing, swap.Side));

    // A remedy for the weakest seat may gain little while the next seat is hardly better; two remedies can then gain much.
    private static double ForPairs(RemedyResult result) => Math.Max(result.GainDb, Math.Min(result.GainAtSeatDb ?? 10, 10));

    // Each pair once, and never two that would put one thing in two places.
    private static bool IsPair(RemedyResult a, RemedyResult b) =>
        Place(a) < Place(b);

    private static int Place(RemedyResult result) => result.Remedies[0].Kind switch
    {
        RemedyKind.Lead or RemedyKind.Raise or RemedyKind.Shelf => 4,
        RemedyKind.TurnSeat or RemedyKind.MoveSeat or RemedyKind.Wire => 3,
        RemedyKind.OpenSide or RemedyKind.SwapSide => 2,
        RemedyKind.OpenDoor => 1,
        _ => 0,
    };
}

/// <summary>What a search for remedies may use.</summary>
/// <param name="Spot">The spot to improve.</param>
/// <param name="Panels">What a side of a rack may be made of instead.</param>
/// <param name="Controllers">The classes of controller there are.</param>
public sealed record ImproveRequest(Spot Spot, IReadOnlyList<Material> Panels, IReadOnlyList<Radio> Controllers)
{
    /// <summary>The kinds of cable for a controller on a wire.</summary>
    public IReadOnlyList<CableKind> Leads { get; init; } = [];

    /// <summary>Farthest that a receiver on a lead is from the wall it is stuck to or the top it lies on, metres.</summary>
    public const double GreatestFromFaceMetres = 0.1;

    /// <summary>
    /// Air that an open side needs in front of it, metres: less than a wavelength away a wall or a cupboard closes it again (judgement).
    /// </summary>
    public const double LeastFreeAirMetres = 0.1;

    /// <summary>A remedy that gains less is not reported, dB: below what anybody could notice.</summary>
    public const double LeastGainDb = 0.5;
}

/// <summary>What would help a spot.</summary>
/// <param name="Before">Its score as things are.</param>
/// <param name="Alone">Remedies that help, the greatest gain first.</param>
/// <param name="Pairs">Two together, where one is not enough and two gain more; the greatest gain first.</param>
/// <param name="Tried">How many remedies were computed.</param>
public sealed record ImproveResult(SpotScore Before, IReadOnlyList<RemedyResult> Alone, IReadOnlyList<RemedyResult> Pairs, int Tried)
{
    /// <summary>Whether every seat passes, as things are or with something reported here.</summary>
    public bool CanPassAll => Before.PassesAll || Alone.Any(r => r.After.PassesAll) || Pairs.Any(r => r.After.PassesAll);
}
