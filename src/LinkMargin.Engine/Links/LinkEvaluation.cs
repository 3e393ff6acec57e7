using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Links;

/// <summary>Budgets of single links. A field's cell and a seat's budget come from the same code.</summary>
public static class LinkEvaluation
{
    /// <summary>The budget of one link, itemised.</summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="spot">Where the console stands.</param>
    /// <param name="seat">Where the player sits.</param>
    public static LinkBudget Budget(LinkModel model, Spot spot, Seat seat)
    {
        LinkModel seen = model.SeenFrom(seat);
        return Budget(seen, seen.For(spot), seat);
    }

    /// <summary>The budgets of one spot with several seats, in their order.</summary>
    public static LinkBudget[] Budgets(LinkModel model, Spot spot, IEnumerable<Seat> seats)
    {
        var ready = new Lazy<SpotModel>(() => model.For(spot)); // not needed where somebody sits in every seat
        return
        [
            .. seats.Select(seat => model.SeenFrom(seat) is var seen && seen == model
                ? Budget(model, ready.Value, seat)
                : Budget(seen, seen.For(spot), seat)),
        ];
    }

    /// <summary>The same link with other radios.</summary>
    internal static LinkBudget With(LinkBudget budget, RadioPair radios)
    {
        IReadOnlyList<DirectionBudget> directions = radios.Directions(budget.PathLossDb);
        return budget with { Directions = directions, MarginDb = WorseOf(directions) };
    }

    /// <summary>Path loss between two places by the straight line alone, dB.</summary>
    /// <param name="scene">The house.</param>
    /// <param name="from">One place.</param>
    /// <param name="to">The other.</param>
    /// <param name="buffer">The thread's own.</param>
    /// <param name="around">The walls sorted around the first place, where many links share it.</param>
    internal static double PathLossDb(Scene scene, Point3 from, Point3 to, TraceBuffer buffer, WallsAround[]? around = null)
    {
        scene.Trace(from, to, buffer, around: around);
        double lossDb = Propagation.FreeSpaceLoss.Db(from.DistanceTo(to), scene.Band.Equivalent);
        foreach (ref readonly Hit hit in buffer.Hits)
        {
            lossDb += CrossingLoss.Db(hit.Kind, hit.Share, scene.TableLossesDb[hit.Material]);
        }

        return lossDb;
    }

    private static LinkBudget Budget(LinkModel model, SpotModel spot, Seat seat)
    {
        Point3 console = model.House.PositionOf(spot.Spot), hands = model.House.PositionOf(seat);
        double pathLossDb = spot.PathLossDb(hands, seat.FacingDegrees, new TraceBuffer());
        IReadOnlyList<DirectionBudget> directions = model.RadiosAt(spot.Spot).Directions(pathLossDb);
        return new LinkBudget(
            spot.Spot,
            seat,
            console.DistanceTo(hands),
            model.Scene.Band.Equivalent,
            new ItemisedPaths(() => spot.Paths(hands, seat.FacingDegrees)),
            pathLossDb,
            directions,
            WorseOf(directions))
        {
            Occupied = model.Occupied,
        };
    }

    private static double WorseOf(IReadOnlyList<DirectionBudget> directions) => directions.Min(direction => direction.MarginDb);
}
