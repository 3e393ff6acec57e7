using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// Where to measure next: the few measurements that would most reduce the uncertainty about the decision.
/// <para>
/// The decision asks questions: does each seat of the best spot pass, and is each other spot's weakest seat
/// worse off than the best spot's? The answer to each question is yes with probability p, and p·(1 − p) is its uncertainty. A
/// measurement moves p in no known direction, but on average it reduces the uncertainty: the more, the more strongly its level is
/// correlated with the question's margin over all houses that the file could describe. Margins and levels are taken as linear in
/// the losses (<see cref="LossVectors"/>), where that average has a closed form (<see cref="OwensT.UncertaintyLeft"/>).
/// </para>
/// <para>
/// Measurements are chosen one after the other, each the best in addition to those before it, so that five do not all show the
/// same thing. A measurement shows losses of materials only as far as the level of its devices is known; it is assumed that one
/// measurement is taken in sight of the transmitter first. At a seat it also shows what the model leaves out on that seat's own
/// link; anywhere else that is noise. No measurement reduces the uncertainty of the radios, so it is not counted here.
/// </para>
/// </summary>
public sealed class NextMeasurements
{
    /// <summary>Distance between the places that are considered, metres.</summary>
    private const double GridMetres = 0.75;

    /// <summary>Least distance between two measurements, metres.</summary>
    private const double ApartMetres = 1;

    private readonly LinkModel model;
    private readonly UncertaintyBasis basis;
    private readonly double handsMetres;

    private NextMeasurements(LinkModel model, UncertaintyBasis basis, double handsMetres) =>
        (this.model, this.basis, this.handsMetres) = (model, basis, handsMetres);

    /// <summary>Finds them.</summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="ranking">Its spots, best first.</param>
    /// <param name="basis">How uncertain the figures are, with what earlier measurements have shown.</param>
    /// <param name="deviceSpreadDb">How uncertain the level of the devices is after earlier measurements, dB; null before any.</param>
    /// <param name="most">How many are wanted.</param>
    /// <param name="handsMetres">How high the device is held where no seat says, metres.</param>
    public static IReadOnlyList<NextMeasurement> Of(
        LinkModel model, Ranking ranking, UncertaintyBasis basis, double? deviceSpreadDb, int most, double handsMetres)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(ranking);
        ArgumentNullException.ThrowIfNull(basis);
        return ranking.Scores.Count == 0 ? [] : new NextMeasurements(model, basis, handsMetres).Find(ranking, deviceSpreadDb, most);
    }

    /// <summary>
    /// The one measurement, from one of some spots and at a seat, that would most reduce the uncertainty about which of them is better.
    /// Only seats are considered, since only there does a measurement also show what the model leaves out on a link that counts.
    /// </summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="close">The spots, the chosen one first; at least two.</param>
    /// <param name="basis">How uncertain the figures are, with what earlier measurements have shown.</param>
    /// <returns>Null where nothing is uncertain.</returns>
    public static NextMeasurement? Settling(LinkModel model, IReadOnlyList<SpotScore> close, UncertaintyBasis basis)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(close);
        ArgumentNullException.ThrowIfNull(basis);
        var search = new NextMeasurements(model, basis, 0);
        var vectors = new LossVectors(basis);
        return search.Find(
            [.. search.RivalsOf(close, vectors)],
            [.. search.CandidatesAt(close, vectors, [.. search.SeatPlaces])],
            basis.Fitted?.Devices.Min(device => (double?)device.SpreadDb),
            1).FirstOrDefault();
    }

    private List<NextMeasurement> Find(Ranking ranking, double? deviceSpreadDb, int most)
    {
        var vectors = new LossVectors(basis);
        return Find(
            [.. SeatsOf(ranking.Scores[0], vectors), .. RivalsOf(ranking.Scores, vectors)],
            [.. CandidatesAt(ranking.Scores, vectors, [.. SeatPlaces, .. FloorPlaces])],
            deviceSpreadDb,
            most);
    }

    private List<NextMeasurement> Find(DecisionQuestion[] questions, Candidate[] candidates, double? deviceSpreadDb, int most)
    {
        double deviceDb = Math.Min(
            deviceSpreadDb ?? basis.Spreads.DeviceDb, double.Hypot(basis.Spreads.ModelDb, basis.Spreads.MeasurementDb)); // after one measurement in sight
        double before = questions.Sum(question => OwensT.UncertaintyLeft(question.InSpreads, 0));
        var reported = new List<NextMeasurement>();
        var chosen = new List<Candidate>();
        while (reported.Count < most && before > 0)
        {
            (Candidate best, double left) = candidates
                .Where(candidate => chosen.All(other => AreApart(other, candidate)))
                .Select(candidate => (candidate, questions.Sum(q => OwensT.UncertaintyLeft(q.InSpreads, q.ShareExplained(candidate.Vector, deviceDb, candidate.NoiseDb)))))
                .DefaultIfEmpty((candidates.FirstOrDefault()!, double.NaN))
                .MinBy(pair => pair.Item2);
            if (!double.IsFinite(left))
            {
                break;
            }

            Learn(best, questions, candidates, deviceDb);
            chosen.Add(best);
            reported.Add(new NextMeasurement(
                best.Transmitter, best.Place.LevelIndex, best.Place.Plan, best.Place.HeightMetres, best.Place.Where, Math.Min(1, left / before)));
        }

        return reported;
    }

    // What is uncertain after a measurement is taken: its direction is known, apart from its noise.
    private static void Learn(Candidate read, DecisionQuestion[] questions, Candidate[] candidates, double deviceDb)
    {
        LossVector direction = read.Vector.Copy();
        double scale = Math.Sqrt(direction.Dot(direction, deviceDb) + (read.NoiseDb * read.NoiseDb));
        foreach (DecisionQuestion question in questions)
        {
            question.Explain(direction, deviceDb, scale);
        }

        foreach (Candidate candidate in candidates)
        {
            candidate.Vector.Condition(direction, deviceDb, scale);
        }
    }

    // Does each seat of the best spot pass?
    private IEnumerable<DecisionQuestion> SeatsOf(SpotScore best, LossVectors vectors) =>
        best.Budgets.Zip(VectorsOf(best.Budgets, vectors), (budget, vector) => new DecisionQuestion(budget.MarginDb - budget.RequiredDb, vector));

    // Is each other spot's weakest seat worse off than the first one's?
    private IEnumerable<DecisionQuestion> RivalsOf(IReadOnlyList<SpotScore> spots, LossVectors vectors)
    {
        LinkBudget best = spots[0].Weakest;
        LossVector ofBest = VectorsOf([best], vectors)[0];
        foreach (LinkBudget rival in spots.Skip(1).Select(score => score.Weakest))
        {
            LossVector apart = ofBest.Copy();
            apart.Add(VectorsOf([rival], vectors)[0], -1);
            yield return new DecisionQuestion(best.MarginDb - best.RequiredDb - (rival.MarginDb - rival.RequiredDb), apart);
        }
    }

    // Links of one spot.
    private LossVector[] VectorsOf(IReadOnlyList<LinkBudget> budgets, LossVectors vectors)
    {
        var stored = StoredPaths.Of(model, [budgets[0].Spot], [.. budgets.Select(budget => budget.Seat)]);
        return [.. budgets.Zip(stored.Links, (budget, link) => vectors.OfSeat(stored, link, model, budget.Spot, budget.Seat, withDevice: false))];
    }

    private IEnumerable<MeasurementPlace> SeatPlaces => model.House.Seats.Select(seat =>
        new MeasurementPlace(seat.LevelIndex, seat.Plan, seat.HandsMetres, $"at '{seat.Name}'", seat));

    private IEnumerable<MeasurementPlace> FloorPlaces =>
        StandingRoom.Of(model.House, new PlaceRequest { Everywhere = true, CellMetres = GridMetres, HeightsMetres = [handsMetres] })
            .Where(place => model.House.Seats.All(seat => seat.LevelIndex != place.LevelIndex || seat.Plan.DistanceTo(place.Plan) >= ApartMetres))
            .Select(place => new MeasurementPlace(place.LevelIndex, place.Plan, place.HeightMetres, place.Where, null));

    private IEnumerable<Candidate> CandidatesAt(IReadOnlyList<SpotScore> spots, LossVectors vectors, MeasurementPlace[] places)
    {
        Point3[] hands = [.. places.Select(place => place.Plan.At(model.House.Levels[place.LevelIndex].ElevationMetres + place.HeightMetres))];
        foreach (Spot spot in spots.Select(score => score.Spot))
        {
            var stored = StoredPaths.Of(model, spot, hands);
            for (int i = 0; i < places.Length; i++)
            {
                yield return new Candidate(
                    spot,
                    places[i],
                    places[i].Seat is { } seat
                        ? vectors.OfSeat(stored, stored.Links[i], model, spot, seat, withDevice: true)
                        : vectors.Of(stored, stored.Links[i], withDevice: true),
                    places[i].Seat is null ? double.Hypot(basis.Spreads.ModelDb, basis.Spreads.MeasurementDb) : basis.Spreads.MeasurementDb);
            }
        }
    }

    private static bool AreApart(Candidate one, Candidate other) =>
        one.Transmitter != other.Transmitter || one.Place.LevelIndex != other.Place.LevelIndex
        || one.Place.Plan.DistanceTo(other.Place.Plan) >= ApartMetres;

    // A seat's own place, or one on free floor.
    private sealed record MeasurementPlace(int LevelIndex, Point2 Plan, double HeightMetres, string Where, Seat? Seat);

    private sealed record Candidate(Spot Transmitter, MeasurementPlace Place, LossVector Vector, double NoiseDb);
}

/// <summary>A measurement worth taking.</summary>
/// <param name="Transmitter">The spot to send from.</param>
/// <param name="LevelIndex">The level to stand on; 0 is the lowest.</param>
/// <param name="Plan">Where on the plan.</param>
/// <param name="HeightMetres">How high to hold the device above the floor, metres.</param>
/// <param name="Where">The seat to stand at, or the room it is in.</param>
/// <param name="UncertaintyLeft">
/// Share of the uncertainty about the decision that is left after this one and those before it, 0 to 1; only what is not known
/// about the house counts.
/// </param>
public sealed record NextMeasurement(Spot Transmitter, int LevelIndex, Point2 Plan, double HeightMetres, string Where, double UncertaintyLeft);
