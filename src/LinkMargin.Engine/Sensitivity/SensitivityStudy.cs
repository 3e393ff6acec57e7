using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Engine.Sensitivity;

/// <summary>
/// Which assumptions a decision depends on: for each, the whole comparison recomputed with what could be true instead.
/// <para>
/// All assumptions are estimated first, from the crossings on the listed paths (<see cref="Unknown.EstimateDb"/>). The few
/// that move the decision most, all floors and all doors that stand open are then recomputed with the full model, exactly as if
/// the house file had been edited; no estimate is reported.
/// </para>
/// </summary>
public sealed class SensitivityStudy
{
    // Where one item alone has most of the effect of its whole row, only that item is studied.
    private const double MostByOne = 0.7;

    // Changes below this do not count, dB.
    private const double LeastDb = 0.05;

    private SensitivityStudy(SensitivityBase before, IReadOnlyList<UnknownEffect> effects, int considered) =>
        (Ranking, Uncertainty, Effects, Considered) = (before.Ranking, before.Uncertainty, effects, considered);

    /// <summary>The ranking as the house file has it.</summary>
    public Ranking Ranking { get; }

    /// <summary>The uncertainty of its links.</summary>
    public HouseUncertainty Uncertainty { get; }

    /// <summary>What was recomputed, what matters most first; what changes nothing is left out.</summary>
    public IReadOnlyList<UnknownEffect> Effects { get; }

    /// <summary>How many assumptions were considered.</summary>
    public int Considered { get; }

    /// <summary>Studies a house.</summary>
    /// <param name="house">The house, without people.</param>
    /// <param name="before">The same, computed.</param>
    /// <param name="request">What to study.</param>
    /// <param name="progress">Receives the share done, 0 to 1, from any thread; null to hear nothing.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static SensitivityStudy Of(
        House house, SensitivityBase before, SensitivityRequest request, Action<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(request);
        var unknowns = new UnknownsOfHouse(house, request.Rows);
        var weigher = new Weigher(before, request.Focus);
        (Unknown All, IReadOnlyList<Unknown> Each)[] materials = [.. unknowns.OfMaterials()];
        Unknown[] floors = [.. unknowns.OfFloors()], doors = [.. unknowns.OfOpenDoors()];
        Unknown[] chosen =
        [
            .. floors,
            .. doors,
            .. materials.Select(row => OneOrAll(row.All, row.Each, weigher))
                .Select(unknown => (Unknown: unknown, Weight: weigher.EstimateOf(unknown)))
                .Where(one => one.Weight.Db >= LeastDb)
                .OrderByDescending(one => one.Weight)
                .Take(request.Most)
                .Select(one => one.Unknown),
        ];
        IReadOnlyList<UnknownEffect> effects = Recompute(house, before, chosen, progress, cancellation);
        return new SensitivityStudy(
            before,
            [.. effects.Select(effect => (Effect: effect, Weight: weigher.Of(effect))).Where(one => one.Weight.Db >= LeastDb).OrderByDescending(one => one.Weight).Select(one => one.Effect)],
            floors.Length + doors.Length + materials.Sum(row => row.Each.Count + (row.Each.Count > 1 ? 1 : 0)));
    }

    private static Unknown OneOrAll(Unknown all, IReadOnlyList<Unknown> each, Weigher weigher)
    {
        Weight ofAll = weigher.EstimateOf(all);
        (Unknown one, Weight weight) = each.Select(unknown => (unknown, weigher.EstimateOf(unknown))).MaxBy(pair => pair.Item2);
        return weight.Decision >= ofAll.Decision && weight.Db >= MostByOne * ofAll.Db ? one : all;
    }

    private static UnknownEffect[] Recompute(House house, SensitivityBase before, Unknown[] chosen, Action<double>? progress, CancellationToken cancellation)
    {
        (Unknown Unknown, Alternative Alternative)[] all = [.. chosen.SelectMany(unknown => unknown.Alternatives.Select(alternative => (unknown, alternative)))];
        var after = new AlternativeEffect[all.Length];
        int done = 0;
        Parallel.For(0, all.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            after[i] = new AlternativeEffect(all[i].Alternative, RankingOf(all[i].Alternative.Edit.ApplyTo(house), before));
            progress?.Invoke((double)Interlocked.Increment(ref done) / all.Length);
        });
        var spreads = new RowSpreads(before);
        return
        [
            .. chosen.Select(unknown => new UnknownEffect(
                unknown, [.. after.Where(one => unknown.Alternatives.Contains(one.Alternative))], budget => spreads.Of(unknown.Rows, budget))),
        ];
    }

    private static Ranking RankingOf(House edited, SensitivityBase before)
    {
        var model = new LinkModel(edited, before.Model.Depth, [.. before.Model.Occupied]);
        return Ranking.Of(model, HouseUncertainty.Of(model, edited.Spots, edited.Seats, before.Basis, before.Uncertainty.Confidence).AtConfidence);
    }
}

/// <summary>A house computed as its file has it.</summary>
/// <param name="Model">The model of the house.</param>
/// <param name="Ranking">Its spots, best first; at least one.</param>
/// <param name="Uncertainty">The uncertainty of its links.</param>
/// <param name="Basis">How uncertain the figures are.</param>
public sealed record SensitivityBase(LinkModel Model, Ranking Ranking, HouseUncertainty Uncertainty, UncertaintyBasis Basis);

/// <summary>What to study.</summary>
/// <param name="Rows">Which rows of the tables could be meant for which.</param>
public sealed record SensitivityRequest(PlausibleRows Rows)
{
    /// <summary>How many assumptions about materials are recomputed, unless requested otherwise.</summary>
    public const int UsualMost = 6;

    /// <summary>How many assumptions about materials are recomputed, besides floors and open doors.</summary>
    public int Most { get; init; } = UsualMost;

    /// <summary>The link whose margin counts; null where the decision does.</summary>
    public LinkBudget? Focus { get; init; }
}

/// <summary>The effect of one assumption.</summary>
/// <param name="Unknown">The assumption.</param>
/// <param name="Alternatives">What happens with each alternative.</param>
/// <param name="SpreadDb">
/// By how much one standard deviation of its rows, common to all of them in the house, moves a link's median margin, dB.
/// </param>
public sealed record UnknownEffect(Unknown Unknown, IReadOnlyList<AlternativeEffect> Alternatives, Func<LinkBudget, double> SpreadDb);

/// <summary>What happens if something else is true.</summary>
/// <param name="Alternative">What is true instead.</param>
/// <param name="Ranking">The ranking then; margins in it are those to count on.</param>
public sealed record AlternativeEffect(Alternative Alternative, Ranking Ranking)
{
    /// <summary>A link's margin to count on then, dB; the link must be one of the ranking's.</summary>
    public double MarginDb(LinkBudget link)
    {
        ArgumentNullException.ThrowIfNull(link);
        SpotScore score = ScoreOf(link.Spot.Name);
        return score.By.MarginDb(score.With(link.Seat)!);
    }

    /// <summary>One spot's score then.</summary>
    public SpotScore ScoreOf(string spot) => Ranking.Scores.First(score => score.Spot.Name == spot);

    /// <summary>The best spot then, if it is another one; else null.</summary>
    public SpotScore? OtherBest(Ranking before)
    {
        ArgumentNullException.ThrowIfNull(before);
        return Ranking.Scores[0].Spot.Name == before.Scores[0].Spot.Name ? null : Ranking.Scores[0];
    }

    /// <summary>Seats of a spot that pass as the file has it but then fail.</summary>
    public IReadOnlyList<string> SeatsLost(SpotScore before)
    {
        ArgumentNullException.ThrowIfNull(before);
        return [.. before.PassingSeats.Intersect(ScoreOf(before.Spot.Name).FailingSeats)];
    }

    /// <summary>Seats of a spot that fail as the file has it but then pass.</summary>
    public IReadOnlyList<string> SeatsGained(SpotScore before)
    {
        ArgumentNullException.ThrowIfNull(before);
        return [.. before.FailingSeats.Intersect(ScoreOf(before.Spot.Name).PassingSeats)];
    }
}

/// <summary>How far the spread of table rows moves the margins of links, to first order.</summary>
internal sealed class RowSpreads
{
    private readonly SharedLosses shared;
    private readonly Dictionary<(string Spot, string Seat), double[]> byRow = [];

    internal RowSpreads(SensitivityBase before)
    {
        Spot[] spots = [.. before.Ranking.Scores.Select(score => score.Spot)];
        IReadOnlyList<Seat> seats = before.Model.House.Seats;
        var stored = StoredPaths.Of(before.Model, spots, seats);
        shared = new SharedLosses(stored.Materials, before.Basis);
        double[] none = new double[stored.Parameters.Count], gradient = new double[stored.Parameters.Count];
        for (int i = 0; i < stored.Links.Count; i++)
        {
            stored.Links[i].PathLossDb(none, gradient);
            byRow[(spots[i / seats.Count].Name, seats[i % seats.Count].Name)] = shared.ByRow(gradient);
        }
    }

    internal double Of(IReadOnlyList<string> rows, LinkBudget link)
    {
        double[] slopes = byRow[(link.Spot.Name, link.Seat.Name)];
        double sum = 0;
        for (int row = 0; row < slopes.Length; row++)
        {
            double db = rows.Contains(shared.Names[row]) ? slopes[row] * shared.SpreadsDb[row] : 0;
            sum += db * db;
        }

        return Math.Sqrt(sum);
    }
}
