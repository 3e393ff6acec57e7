using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;

namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>The weakest seat: turned, moved a little, or with its controller on a cable.</summary>
internal static class SeatRemedies
{
    // With these turns a screen can still be watched.
    private static readonly double[] TurnsDegrees = [-60, -30, 30, 60];

    private const double ReachMetres = 1;
    private const double StepMetres = 0.25;

    // Cables are bought by the half metre.
    private const double CableStepMetres = 0.5;

    /// <summary>All of them.</summary>
    /// <param name="trial">The house and the spot.</param>
    /// <param name="leads">The kinds of cable for a controller on a wire.</param>
    public static IEnumerable<Remedy> All(RemedyTrial trial, IReadOnlyList<CableKind> leads)
    {
        Seat seat = trial.WeakestSeat;
        House house = trial.House;
        if (seat.FacingDegrees is { } facing)
        {
            foreach (double turn in TurnsDegrees)
            {
                yield return new Remedy(RemedyKind.TurnSeat, Effort.Free, [new TurnSeat(seat.Name, Facing.Once(facing + turn))])
                {
                    Thing = seat.Name,
                    LevelIndex = seat.LevelIndex,
                };
            }
        }

        foreach (Point2 place in PlacesNear(house, seat))
        {
            yield return new Remedy(RemedyKind.MoveSeat, Effort.Free, [new MoveSeat(seat.Name, seat.LevelIndex, place, seat.HandsMetres)])
            {
                Thing = seat.Name,
                LevelIndex = seat.LevelIndex,
            };
        }

        if (trial.Before.Budgets.Count > 1)
        {
            Spot spot = trial.Spot;
            CablePlace hands = CablePlace.Of(seat);
            LeadRun run = new RunPlanner(house with { Spots = [spot] }, leads, [hands]).Lead(spot, hands);
            yield return new Remedy(RemedyKind.Wire, Effort.Cable, [new RemoveSeat(seat.Name)])
            {
                Thing = seat.Name,
                LevelIndex = seat.LevelIndex,
                LengthMetres = CableStepMetres * Math.Ceiling(run.NeededMetres / CableStepMetres),
                Run = run,
                CrossesStructure = spot.LevelIndex != seat.LevelIndex || RoomOf(house, spot.LevelIndex, spot.Plan) != RoomOf(house, seat.LevelIndex, seat.Plan),
            };
        }
    }

    private static IEnumerable<Point2> PlacesNear(House house, Seat seat)
    {
        Room? room = RoomOf(house, seat.LevelIndex, seat.Plan);
        int steps = (int)(ReachMetres / StepMetres);
        return from row in Enumerable.Range(-steps, (2 * steps) + 1)
               from column in Enumerable.Range(-steps, (2 * steps) + 1)
               let place = new Point2(seat.Plan.X + (column * StepMetres), seat.Plan.Y + (row * StepMetres))
               where (row != 0 || column != 0)
                   && place.DistanceTo(seat.Plan) <= ReachMetres
                   && (room is null || room.Outline.DepthOf(place) > StandingRoom.ClearMetres)
                   && !StandingRoom.IsOverVoid(house, seat.LevelIndex, place)
                   && !house.Fixtures.Any(f => f.LevelIndex == seat.LevelIndex && f.Contains(place, seat.HandsMetres))
               select place;
    }

    private static Room? RoomOf(House house, int level, Point2 plan) =>
        house.Levels[level].Rooms.FirstOrDefault(room => room.Outline.Contains(plan));
}
