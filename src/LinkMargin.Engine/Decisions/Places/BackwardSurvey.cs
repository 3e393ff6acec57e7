using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Decisions.Places;

/// <summary>
/// Links computed backwards: from each seat to many places for a console. A path loses the same both ways, so one spot model at
/// each seat, with its player's body at that end, serves all places, at the price of a field. The straight line is exactly the
/// same both ways. The full model is so but for which diffracted paths it finds, so its answer here is a survey, to be computed
/// forwards where it matters.
/// </summary>
internal sealed class BackwardSurvey
{
    private readonly IReadOnlyList<(Seat Seat, SpotModel Back)> seats;
    private readonly double greatestLossDb;

    /// <summary>Gets ready to look from some seats.</summary>
    public BackwardSurvey(LinkModel model, IReadOnlyList<Seat> seats, int? threads = null)
    {
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

    /// <summary>Whether its answers are those that the links have forwards.</summary>
    public bool IsExact { get; }

    /// <summary>The seats that are looked from.</summary>
    public IReadOnlyList<Seat> Seats => [.. seats.Select(one => one.Seat)];

    /// <summary>Margin at the tables' losses less what the seat requires, of the seat that has least, at each place; dB.</summary>
    public double[] WeakestHeadroomDb(
        House house, IReadOnlyList<Standing> places, int? threads, Action? placeDone, CancellationToken cancellation) =>
        [.. HeadroomDb(house, places, threads, placeDone, cancellation).Select(ofSeats => ofSeats.Min())];

    /// <summary>The same of every seat, at each place, in the order of <see cref="Seats"/>; dB.</summary>
    public double[][] HeadroomDb(
        House house, IReadOnlyList<Standing> places, int? threads, Action? placeDone, CancellationToken cancellation)
    {
        double[][] headroomDb = new double[places.Count][];
        var options = new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = threads ?? Environment.ProcessorCount };
        Parallel.For(0, places.Count, options, () => new TraceBuffer(), Look, _ => { });
        return headroomDb;

        TraceBuffer Look(int i, ParallelLoopState state, TraceBuffer buffer)
        {
            Point3 at = PointOf(house, places[i]);
            headroomDb[i] = [.. seats.Select(seat =>
                greatestLossDb - seat.Back.PathLossDb(at, seat.Seat.FacingDegrees, buffer) - seat.Seat.RequiredDb)];
            placeDone?.Invoke();
            return buffer;
        }
    }

    /// <summary>The links' paths, kept to be computed with other losses: seat by seat, each with the places in their order.</summary>
    public StoredPaths Store(LinkModel model, IReadOnlyList<Standing> places)
    {
        Point3[] at = [.. places.Select(place => PointOf(model.House, place))];
        return StoredPaths.Of(model, seats.SelectMany(seat => at.Select(place => (seat.Back, place, seat.Seat.FacingDegrees))));
    }

    private static Point3 PointOf(House house, Standing place) =>
        place.Plan.At(house.Levels[place.LevelIndex].ElevationMetres + place.HeightMetres);
}
