using System.Globalization;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Decisions.Places;

/// <summary>
/// Searches for the best places for a console, by the weakest seat at each. All places are surveyed by the median, with links computed
/// backwards; those that could be the best are judged by their stored paths, also backwards; the best of them, and those that could be as
/// good, are computed forwards, like a spot. Only those are reported.
/// </summary>
public sealed class PlaceSearch
{
    // With this few places, all are computed: the result is then the best of the grid, whatever the survey says.
    private const int FewPlaces = 200;

    // How much better than its survey a place may turn out, apart from the allowance for uncertainty on every link; twice the worst
    // seen among random links (BackwardLinkTests).
    private const double SurveySlackDb = 1;
    private const double ExactSlackDb = 1e-6;

    /// <summary>Greatest difference between a place judged backwards and computed forwards, dB.</summary>
    internal const double JudgedSlackDb = 0.01;

    // How many places are judged between two checks whether the rest can still matter; the same for any number of threads.
    private const int AtATime = 16;

    private readonly LinkModel model;
    private readonly PlaceRequest request;
    private readonly ISpotJudge judge;
    private readonly Seat[] seats;
    private readonly Lazy<BackwardSurvey> survey;

    /// <summary>Prepares a search.</summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="request">Where to search.</param>
    /// <param name="judge">Says how good a spot is; null for the median.</param>
    public PlaceSearch(LinkModel model, PlaceRequest request, ISpotJudge? judge = null)
    {
        (this.model, this.request, this.judge) = (model, request, judge ?? MedianJudge.Instance);
        seats = [.. model.House.Seats.Where(seat => seat.Plays is null)];
        Places = StandingRoom.Of(model.House, request);
        survey = new(() => new BackwardSurvey(model, seats, request.Threads));
    }

    /// <summary>Every place there is.</summary>
    public IReadOnlyList<Standing> Places { get; }

    /// <summary>The links of its seats, computed backwards.</summary>
    internal BackwardSurvey Survey => survey.Value;

    /// <summary>How many threads may work at once; null: as many as there are processors.</summary>
    internal int? Threads => request.Threads;

    /// <summary>Whether some seat plays any console, and not only one at a spot of its own.</summary>
    public bool HasSeats => seats.Length > 0;

    /// <summary>Searches.</summary>
    /// <param name="placeDone">Called from any thread for each place surveyed; null to hear nothing.</param>
    /// <param name="cancellation">Stops the work.</param>
    public PlaceResult Run(Action? placeDone = null, CancellationToken cancellation = default)
    {
        if (!HasSeats || Places.Count == 0)
        {
            return new PlaceResult([], Places.Count, 0);
        }

        double[] surveyDb = survey.Value.WeakestHeadroomDb(Places, null, request.Threads, placeDone, cancellation);
        int[] order = [.. Enumerable.Range(0, Places.Count).OrderByDescending(i => surveyDb[i]).ThenBy(i => i)];
        var judgedDb = new Dictionary<int, double>();
        var worked = new Dictionary<int, PlacedSpot>();
        bool isFew = Places.Count <= FewPlaces;
        bool isExact = survey.Value.IsExact && judge is MedianJudge;
        double slackDb = isFew ? double.PositiveInfinity : (isExact ? ExactSlackDb : SurveySlackDb) - judge.LeastAllowanceDb(model);
        var best = new List<PlacedSpot>();
        for (int rank = 0; rank < request.Most; rank++)
        {
            // The next best is searched among places far enough from those found already.
            int[] left = [.. order.Where(i => best.All(reported => AreApart(reported.Place, Places[i])))];
            if (left.Length == 0)
            {
                break;
            }

            // For a place that is not the first, judging the top of the survey once is enough.
            int looks = rank == 0 || isFew || isExact ? int.MaxValue : 1;
            best.Add(BestOf(Candidates(left, surveyDb, slackDb, looks, judgedDb, cancellation), worked, cancellation));
        }

        return new PlaceResult(
            [.. best.OrderByDescending(reported => reported.Score.WeakestHeadroomDb)
                .Select((reported, i) => reported with { Score = reported.Score.Named(FormattableString.Invariant($"place {i + 1}")) })],
            Places.Count,
            worked.Count);
    }

    // Those of some places that could be the best, by the links computed backwards.
    private int[] Candidates(
        int[] bySurvey, double[] surveyDb, double slackDb, int looks, Dictionary<int, double> judgedDb, CancellationToken cancellation)
    {
        var looked = new List<int>();
        double bestDb = double.NegativeInfinity;
        foreach (int[] some in bySurvey.Chunk(AtATime).Take(looks))
        {
            if (surveyDb[some[0]] + slackDb < bestDb)
            {
                break;
            }

            Judge([.. some.Where(i => !judgedDb.ContainsKey(i))], judgedDb, cancellation);
            looked.AddRange(some);
            bestDb = Math.Max(bestDb, some.Max(i => judgedDb[i]));
        }

        return [.. looked.Where(i => judgedDb[i] + JudgedSlackDb >= bestDb)];
    }

    private void Judge(int[] places, Dictionary<int, double> judgedDb, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        Standing[] standings = [.. places.Select(i => Places[i])];
        double[] headroomDb = judge.WeakestHeadroomDb(model, survey.Value.Store(standings), seats, [.. standings.Select(survey.Value.PointOf)]);
        for (int i = 0; i < places.Length; i++)
        {
            judgedDb.Add(places[i], headroomDb[i]);
        }
    }

    private PlacedSpot BestOf(int[] candidates, Dictionary<int, PlacedSpot> worked, CancellationToken cancellation)
    {
        WorkOut([.. candidates.Where(i => !worked.ContainsKey(i))], worked, cancellation);
        return Ranked([.. candidates.Select(i => worked[i])]);
    }

    private void WorkOut(int[] places, Dictionary<int, PlacedSpot> worked, CancellationToken cancellation)
    {
        var scores = new PlacedSpot[places.Length];
        var options = new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = request.Threads ?? Environment.ProcessorCount };
        Parallel.For(0, places.Length, options, i =>
        {
            Standing place = Places[places[i]];
            var spot = new Spot(places[i].ToString("D9", CultureInfo.InvariantCulture), place.LevelIndex, place.Plan, place.HeightMetres);
            scores[i] = new PlacedSpot(place, judge.Score(model, spot, seats));
        });
        for (int i = 0; i < places.Length; i++)
        {
            worked.Add(places[i], scores[i]);
        }
    }

    // Named by their order on the grid, so that equals are ordered the same way each time.
    private static PlacedSpot Ranked(PlacedSpot[] some)
    {
        SpotScore first = Ranking.Of(some.Select(placed => placed.Score)).Scores[0];
        return some.First(placed => placed.Score == first);
    }

    private bool AreApart(Standing a, Standing b) =>
        a.LevelIndex != b.LevelIndex || a.Plan.DistanceTo(b.Plan) >= request.ApartMetres;
}

/// <summary>Where to search for a place for a console.</summary>
public sealed record PlaceRequest
{
    /// <summary>Default for <see cref="ApartMetres"/>.</summary>
    public const double UsualApartMetres = 1;

    /// <summary>Default distance between places in a zone, metres: about a wavelength.</summary>
    public const double ZoneCellMetres = 0.1;

    /// <summary>Default distance between places on the floor, metres: about the width of a console.</summary>
    public const double FloorCellMetres = 0.25;

    /// <summary>Default heights above the floor where no zone states any, metres: a low and a high board of a shelf.</summary>
    public static IReadOnlyList<double> FloorHeightsMetres { get; } = [0.5, 1.5];

    /// <summary>Whether to search all free floor although the house has zones.</summary>
    public bool Everywhere { get; init; }

    /// <summary>Distance between places, metres, above 0; null for <see cref="ZoneCellMetres"/> or <see cref="FloorCellMetres"/>.</summary>
    public double? CellMetres { get; init; }

    /// <summary>Heights above the floor where no zone states any, metres.</summary>
    public IReadOnlyList<double> HeightsMetres { get; init; } = FloorHeightsMetres;

    /// <summary>The one level to search; null for all.</summary>
    public int? LevelIndex { get; init; }

    /// <summary>How many places are wanted at most.</summary>
    public int Most { get; init; } = 5;

    /// <summary>Least distance between two places on one level that are listed separately, metres.</summary>
    public double ApartMetres { get; init; } = UsualApartMetres;

    /// <summary>How many threads may work at once; every number gives the same answer. Null: as many as there are processors.</summary>
    public int? Threads { get; init; }
}

/// <summary>The result of a search for places.</summary>
/// <param name="Best">The best places, distinct, best first; empty where there is nowhere for a console to stand.</param>
/// <param name="LookedAt">How many places there were.</param>
/// <param name="Computed">How many of them were computed forwards.</param>
public sealed record PlaceResult(IReadOnlyList<PlacedSpot> Best, int LookedAt, int Computed);

/// <summary>A place for a console, computed forwards as a spot of its own.</summary>
/// <param name="Place">The place.</param>
/// <param name="Score">Its score for the seats.</param>
public sealed record PlacedSpot(Standing Place, SpotScore Score);
