using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Decisions.Places;

/// <summary>
/// Links read backwards: from each seat to many places for a console. A path loses the same both ways, so one spot model at
/// each seat serves all places, at the price of a field. What is not the same both ways is put right: the player's body
/// belongs to the seat's end, so it stands in the house as a thing, and what a field takes for a body at the other end, a
/// mean over facings, is given back. The straight line is exactly the same both ways. The full model is so but for small
/// things (which bends it looks at, how evenly a room is filled), so its answer here is a survey, to be worked out forwards
/// where it matters.
/// </summary>
internal sealed class BackwardSurvey
{
    private readonly IReadOnlyList<(Seat Seat, SpotModel From, double GivenBackDb)> seats;
    private readonly double greatestLossDb;

    /// <summary>Gets ready to look from some seats.</summary>
    public BackwardSurvey(LinkModel model, IReadOnlyList<Seat> seats, int? threads = null)
    {
        greatestLossDb = model.Radios.GreatestLossDb;
        IsExact = model.Depth == ModelDepth.Direct;
        House bare = model.House with { Fixtures = [.. model.House.Fixtures.Where(fixture => fixture.Seat is null)] };
        double meanBodyDb = IsExact ? 0 : -Decibels.FromPowerRatio(new BodyShadow(model.Scene.Band.Equivalent.WavelengthMetres).Diffuse);
        var from = new (Seat, SpotModel, double)[seats.Count];
        Parallel.For(0, seats.Count, new ParallelOptions { MaxDegreeOfParallelism = threads ?? Environment.ProcessorCount }, i =>
        {
            Seat seat = seats[i];
            bool hasPlayer = !IsExact && seat.FacingDegrees is not null;
            Seat[] people = [.. model.Occupied.Where(other => other.Name != seat.Name), .. hasPlayer ? [seat] : Array.Empty<Seat>()];
            LinkModel seen = people.Length == 0 && model.Occupied.Count == 0 ? model : new LinkModel(bare, model.Depth, people);
            var hands = new Spot(seat.Name, seat.LevelIndex, seat.Plan, seat.HandsMetres);
            from[i] = (seat, seen.For(hands), hasPlayer ? meanBodyDb : 0);
        });
        this.seats = from;
    }

    /// <summary>Whether its answers are those that the links have forwards.</summary>
    public bool IsExact { get; }

    /// <summary>Median margin less what the seat asks for, of the seat that has least, at each place; dB.</summary>
    public double[] WorstHeadroomDb(
        House house, IReadOnlyList<Standing> places, int? threads, Action? placeDone, CancellationToken cancellation)
    {
        double[] headroomDb = new double[places.Count];
        var options = new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = threads ?? Environment.ProcessorCount };
        Parallel.For(0, places.Count, options, () => new TraceBuffer(), Look, _ => { });
        return headroomDb;

        TraceBuffer Look(int i, ParallelLoopState state, TraceBuffer buffer)
        {
            Standing place = places[i];
            var at = place.Plan.At(house.Levels[place.LevelIndex].ElevationMetres + place.HeightMetres);
            headroomDb[i] = seats.Min(seat =>
                greatestLossDb - seat.From.PathLossDb(at, null, buffer) + seat.GivenBackDb - seat.Seat.RequiredDb);
            placeDone?.Invoke();
            return buffer;
        }
    }
}
