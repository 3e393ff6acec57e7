using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Decisions.Places;

/// <summary>
/// Links computed backwards: from each seat to many places for a console. A path loses the same both ways, so one spot model at
/// each seat, with its player's body at that end, is enough for all places, at the cost of a field. The straight line is exactly
/// the same both ways. So is the full model, except for which diffracted paths it finds. So its result here is a survey, to be
/// computed forwards where it matters.
/// </summary>
internal sealed class BackwardSurvey
{
    // A difference this large from the weakest so far is real, whatever the rounding.
    private const double RoundingDb = 1e-9;

    private readonly LinkModel model;
    private readonly (Seat Seat, SpotModel Back)[] seats;
    private readonly double greatestLossDb;

    /// <summary>Prepares a survey from some seats.</summary>
    public BackwardSurvey(LinkModel model, IReadOnlyList<Seat> seats, int? threads = null)
    {
        this.model = model;
        greatestLossDb = model.Radios.GreatestLossDb;
        IsExact = model.Depth == ModelDepth.Direct;
        var back = new (Seat, SpotModel)[seats.Count];
        Parallel.For(
            0,
            seats.Count,
            new ParallelOptions { MaxDegreeOfParallelism = threads ?? Environment.ProcessorCount },
            i => back[i] = (seats[i], model.BackFrom(seats[i]).ForMany()));
        this.seats = back;
    }

    /// <summary>Whether its results are those of the links computed forwards.</summary>
    public bool IsExact { get; }

    /// <summary>The seats that links start from.</summary>
    public IReadOnlyList<Seat> Seats => [.. seats.Select(one => one.Seat)];

    /// <summary>
    /// Headroom of the weakest seat at each place, dB. A seat with more headroom from the diffuse field, or from the paths that always count,
    /// than another has from all paths is not the weakest, whatever other paths add: only the rest are computed in full.
    /// </summary>
    /// <param name="places">The places.</param>
    /// <param name="moreDb">What to add to the margin at the tables' losses at each place, seat by seat, dB; null for nothing.</param>
    /// <param name="threads">How many threads may work at once; null: as many as there are processors.</param>
    /// <param name="placeDone">Called from any thread for each place; null to hear nothing.</param>
    /// <param name="cancellation">Stops the work.</param>
    public double[] WeakestHeadroomDb(
        IReadOnlyList<Standing> places, double[][]? moreDb = null, int? threads = null, Action? placeDone = null, CancellationToken cancellation = default)
    {
        double[] weakestDb = new double[places.Count];
        var options = new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = threads ?? Environment.ProcessorCount };
        Parallel.For(0, places.Count, options, () => new SeatTraces(seats.Length), Look, _ => { });
        return weakestDb;

        SeatTraces Look(int i, ParallelLoopState state, SeatTraces traces)
        {
            weakestDb[i] = WeakestHeadroomDb(PointOf(places[i]), moreDb?[i], traces);
            placeDone?.Invoke();
            return traces;
        }
    }

    /// <summary>Headroom of one seat at a place, dB.</summary>
    public double HeadroomDb(Seat seat, Standing place)
    {
        SpotModel back = seats.First(one => one.Seat == seat).Back;
        return greatestLossDb - back.PathLossDb(PointOf(place), seat.FacingDegrees, new TraceBuffer()) - seat.RequiredDb;
    }

    /// <summary>The links' paths, stored to be evaluated with other losses: seat by seat, each with the places in their order.</summary>
    public StoredPaths Store(IReadOnlyList<Standing> places)
    {
        Point3[] at = [.. places.Select(PointOf)];
        return StoredPaths.Of(model, seats.SelectMany(seat => at.Select(place => new StoredRequest(seat.Back, place, seat.Seat.FacingDegrees, false))));
    }

    /// <summary>Where a place is.</summary>
    public Point3 PointOf(Standing place) => place.Plan.At(model.House.Levels[place.LevelIndex].ElevationMetres + place.HeightMetres);

    private double WeakestHeadroomDb(Point3 at, double[]? moreDb, SeatTraces traces)
    {
        var leastDb = new double[seats.Length];
        int[] order = [.. Enumerable.Range(0, leastDb.Length)];
        for (int seat = 0; seat < leastDb.Length; seat++)
        {
            leastDb[seat] = HeadroomDb(seat, seats[seat].Back.QuickPathLossDb(at, seats[seat].Seat.FacingDegrees, traces.Of[seat]));
        }

        Array.Sort([.. leastDb], order);
        int first = traces.Weakest ?? order[0], weakest = first;
        double weakestDb = double.PositiveInfinity;
        weakestDb = FullDb(first);
        foreach (int seat in order)
        {
            if (leastDb[seat] >= weakestDb)
            {
                break;
            }

            if (seat != first && FullDb(seat) is var headroomDb && headroomDb < weakestDb)
            {
                (weakest, weakestDb) = (seat, headroomDb);
            }
        }

        traces.Weakest = weakest;
        return weakestDb;

        // Or any headroom above the weakest so far.
        double FullDb(int seat)
        {
            BegunLink link = seats[seat].Back.Begin(at, seats[seat].Seat.FacingDegrees, traces.Of[seat]);
            double beginDb = HeadroomDb(seat, link.GreatestPathLossDb);
            return beginDb >= weakestDb ? beginDb : HeadroomDb(seat, seats[seat].Back.FinishDb(link, HeadroomDb(seat, weakestDb) - RoundingDb, traces.Of[seat]));
        }

        // Gives the headroom for a loss, and by the same sum the loss for a headroom.
        double HeadroomDb(int seat, double lossDb) => greatestLossDb - lossDb - seats[seat].Seat.RequiredDb + (moreDb?[seat] ?? 0);
    }

    // One thread's room for the links of a place. The seat that was the weakest at the place before is computed first: if it is the weakest
    // again, the others need little.
    private sealed class SeatTraces(int seats)
    {
        internal LinkTrace[] Of { get; } = [.. Enumerable.Range(0, seats).Select(_ => new LinkTrace())];

        internal int? Weakest { get; set; }
    }
}
