using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;

namespace LinkMargin.Engine.Doubt;

/// <summary>
/// Where to read next: the few readings that would most reduce the doubt about the decision.
/// <para>
/// The decision asks questions: does each seat of the best spot have what it asks for, and is each other spot's worst seat
/// worse off than the best spot's? Of each question the answer has a probability p, and p·(1 − p) is its doubt. A reading
/// does not move p in any known direction, but it shrinks the doubt on average, the more the further it goes with the
/// question's margin over all houses that could be behind the file. Margins and levels are taken as linear in the losses
/// (<see cref="LossVectors"/>), where that average has a closed form (<see cref="OwensT.DoubtLeft"/>).
/// </para>
/// <para>
/// Readings are chosen one after the other, each the best beside those before it, so that five do not all tell the same
/// thing. A reading tells of materials only as far as the level of its devices is known; it is taken for granted that one
/// reading is taken in sight of the transmitter first. At a seat it also tells what the model leaves out on that seat's own
/// link; anywhere else that is noise. How the radios are stays doubtful whatever is read, so it is left aside here.
/// </para>
/// </summary>
public sealed class NextReadings
{
    /// <summary>Between places that are looked at, metres.</summary>
    private const double GridMetres = 0.75;

    /// <summary>Two readings are at least so far apart, metres.</summary>
    private const double ApartMetres = 1;

    private readonly LinkModel model;
    private readonly DoubtBasis basis;
    private readonly double handsMetres;

    private NextReadings(LinkModel model, DoubtBasis basis, double handsMetres) =>
        (this.model, this.basis, this.handsMetres) = (model, basis, handsMetres);

    /// <summary>Finds them.</summary>
    /// <param name="model">The house, ready.</param>
    /// <param name="ranking">Its spots, best first.</param>
    /// <param name="basis">How far figures may be out, with what earlier readings have told.</param>
    /// <param name="deviceSpreadDb">How far the level of the devices may be out after earlier readings, dB; null before any.</param>
    /// <param name="most">How many are wanted.</param>
    /// <param name="handsMetres">How high the device is held where no seat says, metres.</param>
    public static IReadOnlyList<NextReading> Of(
        LinkModel model, Ranking ranking, DoubtBasis basis, double? deviceSpreadDb, int most, double handsMetres)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(ranking);
        ArgumentNullException.ThrowIfNull(basis);
        return ranking.Scores.Count == 0 ? [] : new NextReadings(model, basis, handsMetres).Find(ranking, deviceSpreadDb, most);
    }

    private List<NextReading> Find(Ranking ranking, double? deviceSpreadDb, int most)
    {
        var vectors = new LossVectors(basis);
        DecisionQuestion[] questions = [.. QuestionsOf(ranking, vectors)];
        Candidate[] candidates = [.. CandidatesOf(ranking, vectors)];
        double deviceDb = Math.Min(
            deviceSpreadDb ?? basis.Spreads.DeviceDb, double.Hypot(basis.Spreads.ModelDb, basis.Spreads.ReadingDb)); // after one reading in sight
        double before = questions.Sum(question => OwensT.DoubtLeft(question.InSpreads, 0));
        var told = new List<NextReading>();
        var chosen = new List<Candidate>();
        while (told.Count < most && before > 0)
        {
            (Candidate best, double left) = candidates
                .Where(candidate => chosen.All(other => AreApart(other, candidate)))
                .Select(candidate => (candidate, questions.Sum(q => OwensT.DoubtLeft(q.InSpreads, q.ShareExplained(candidate.Vector, deviceDb, candidate.NoiseDb)))))
                .DefaultIfEmpty((candidates.FirstOrDefault()!, double.NaN))
                .MinBy(pair => pair.Item2);
            if (!double.IsFinite(left))
            {
                break;
            }

            Learn(best, questions, candidates, deviceDb);
            chosen.Add(best);
            told.Add(new NextReading(best.Transmitter, best.LevelIndex, best.Plan, best.HeightMetres, best.Where, left / before));
        }

        return told;
    }

    // What is left open once a reading is taken: its direction is known but for its noise.
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

    private IEnumerable<DecisionQuestion> QuestionsOf(Ranking ranking, LossVectors vectors)
    {
        SpotScore best = ranking.Scores[0];
        foreach (LinkBudget budget in best.Budgets)
        {
            yield return new DecisionQuestion(budget.MarginDb - budget.RequiredDb, Vector(budget));
        }

        foreach (SpotScore rival in ranking.Scores.Skip(1))
        {
            LossVector apart = Vector(best.Worst);
            apart.Add(Vector(rival.Worst), -1);
            double ahead = best.Worst.MarginDb - best.Worst.RequiredDb - (rival.Worst.MarginDb - rival.Worst.RequiredDb);
            yield return new DecisionQuestion(ahead, apart);
        }

        LossVector Vector(LinkBudget budget)
        {
            var stored = StoredPaths.Of(model, [budget.Spot], [budget.Seat]);
            return vectors.OfSeat(stored, stored.Links[0], model, budget.Spot, budget.Seat, withDevice: false);
        }
    }

    private IEnumerable<Candidate> CandidatesOf(Ranking ranking, LossVectors vectors)
    {
        House house = model.House;
        var request = new PlaceRequest { Everywhere = true, CellMetres = GridMetres, HeightsMetres = [handsMetres] };
        (int Level, Point2 Plan, double Height, string Where, Seat? Seat)[] places =
        [
            .. house.Seats.Select(seat => (seat.LevelIndex, seat.Plan, seat.HandsMetres, $"at '{seat.Name}'", (Seat?)seat)),
            .. StandingRoom.Of(house, request)
                .Where(place => house.Seats.All(seat => seat.LevelIndex != place.LevelIndex || seat.Plan.DistanceTo(place.Plan) >= ApartMetres))
                .Select(place => (place.LevelIndex, place.Plan, place.HeightMetres, place.Where, (Seat?)null)),
        ];
        Point3[] hands = [.. places.Select(place => place.Plan.At(house.Levels[place.Level].ElevationMetres + place.Height))];
        var found = new Candidate[ranking.Scores.Count][];
        for (int s = 0; s < found.Length; s++)
        {
            Spot spot = ranking.Scores[s].Spot;
            var stored = StoredPaths.Of(model, spot, hands);
            found[s] = [.. places.Select((place, i) => new Candidate(
                spot,
                place.Level,
                place.Plan,
                place.Height,
                place.Where,
                place.Seat is { } seat
                    ? vectors.OfSeat(stored, stored.Links[i], model, spot, seat, withDevice: true)
                    : vectors.Of(stored, stored.Links[i], withDevice: true),
                place.Seat is null ? double.Hypot(basis.Spreads.ModelDb, basis.Spreads.ReadingDb) : basis.Spreads.ReadingDb))];
        }

        return found.SelectMany(some => some);
    }

    private static bool AreApart(Candidate one, Candidate other) =>
        one.Transmitter != other.Transmitter || one.LevelIndex != other.LevelIndex || one.Plan.DistanceTo(other.Plan) >= ApartMetres;

    private sealed record Candidate(Spot Transmitter, int LevelIndex, Point2 Plan, double HeightMetres, string Where, LossVector Vector, double NoiseDb);
}
