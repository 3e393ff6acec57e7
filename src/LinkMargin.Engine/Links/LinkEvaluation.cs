using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Links;

/// <summary>Paths and budgets of single links. A field's cell and a seat's budget come from the same code.</summary>
public static class LinkEvaluation
{
    /// <summary>The budget of one link, itemised.</summary>
    /// <param name="scene">The house, laid out.</param>
    /// <param name="spot">Where the console stands.</param>
    /// <param name="seat">Where the player sits.</param>
    public static LinkBudget Budget(Scene scene, Spot spot, Seat seat)
    {
        Point3 console = scene.House.PositionOf(spot), hands = scene.House.PositionOf(seat);
        PathBudget direct = Itemise(scene, DirectPath(scene, console, hands));
        double pathLossDb = direct.LossDb;
        var directions = new RadioPair(scene.House.Console, scene.House.Controller).Directions(pathLossDb);
        return new LinkBudget(
            spot,
            seat,
            console.DistanceTo(hands),
            scene.Band.Equivalent,
            [direct],
            pathLossDb,
            directions,
            directions.Min(direction => direction.MarginDb));
    }

    /// <summary>The budgets of every seat with every spot: one row for each seat, one column for each spot.</summary>
    public static LinkBudget[][] Budgets(Scene scene) =>
        [.. scene.House.Seats.Select(seat =>
            scene.House.Spots.Select(spot => Budget(scene, spot, seat)).ToArray())];

    /// <summary>The straight line between two places, with what it meets.</summary>
    public static Path DirectPath(Scene scene, Point3 from, Point3 to)
    {
        var buffer = new TraceBuffer();
        scene.Trace(from, to, buffer);
        double length = from.DistanceTo(to);
        var crossings = new Crossing[buffer.Count];
        for (int i = 0; i < crossings.Length; i++)
        {
            Hit hit = buffer.Hits[i];
            crossings[i] = new Crossing(
                hit.Kind,
                scene.Names[hit.Name],
                scene.Materials[hit.Material],
                hit.Level,
                double.RadiansToDegrees(Math.Acos(hit.CosIncidence)),
                hit.Share,
                hit.Along * length);
        }

        return new Path(PathKind.Direct, [from, to], length, crossings);
    }

    /// <summary>Path loss between two places in dB, without the list of what it is made of.</summary>
    internal static double PathLossDb(Scene scene, Point3 from, Point3 to, TraceBuffer buffer)
    {
        scene.Trace(from, to, buffer);
        double lossDb = FreeSpaceLoss.Db(from.DistanceTo(to), scene.Band.Equivalent);
        foreach (ref readonly Hit hit in buffer.Hits)
        {
            lossDb += CrossingLoss.Db(hit.Kind, hit.Share, scene.TableLossesDb[hit.Material]);
        }

        return lossDb;
    }

    private static PathBudget Itemise(Scene scene, Path path)
    {
        double freeSpaceDb = FreeSpaceLoss.Db(path.LengthMetres, scene.Band.Equivalent);
        double[] crossingsDb = [.. path.Crossings.Select(c => CrossingLoss.Db(c.Kind, c.Share, c.Material.LossDb))];
        double lossDb = freeSpaceDb;
        foreach (double crossingDb in crossingsDb)
        {
            lossDb += crossingDb; // in order, as a field adds them, so that both give the same bits
        }

        return new PathBudget(path, freeSpaceDb, crossingsDb, lossDb);
    }
}
