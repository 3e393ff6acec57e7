using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Links;

/// <summary>The straight line and the table loss of everything on it.</summary>
internal sealed class DirectSpotModel(Scene scene, Spot spot, WallsAround[]? around = null) : SpotModel(scene, spot)
{
    internal override double PathLossDb(Point3 hands, double? facingDegrees, TraceBuffer buffer) =>
        PathLoss.Reported(LinkEvaluation.PathLossDb(Scene, Console, hands, buffer, around));

    internal override double QuickPathLossDb(Point3 hands, double? facingDegrees, LinkTrace trace) => double.PositiveInfinity;

    internal override BegunLink Begin(Point3 hands, double? facingDegrees, LinkTrace trace)
    {
        double lossDb = PathLossDb(hands, facingDegrees, trace.Buffer);
        return new BegunLink(new LinkEnds(Console, hands, facingDegrees, false), Decibels.ToPowerRatio(-lossDb), lossDb);
    }

    internal override double FinishDb(in BegunLink begun, double enoughDb, LinkTrace trace) => begun.GreatestPathLossDb;

    internal override SpotModel ForMany() => new DirectSpotModel(Scene, Spot, Scene.Around(Console));

    internal override IReadOnlyList<PathBudget> Paths(Point3 hands, double? facingDegrees)
    {
        Crossing[] crossings = Itemisation.Crossings(Scene, Console, hands, new TraceBuffer(), wholeFloors: false);
        double length = Console.DistanceTo(hands);
        double freeSpaceDb = FreeSpaceLoss.Db(length, Scene.Band.Equivalent);
        double[] crossingsDb = [.. crossings.Select(c => CrossingLoss.Db(c.Kind, c.Share, c.Material.LossDb))];
        double lossDb = freeSpaceDb;
        foreach (double crossingDb in crossingsDb)
        {
            lossDb += crossingDb; // in the same order as in a field, so that both give the same bits
        }

        var path = new TracedPath(PathKind.Direct, [Console, hands], length, crossings);
        return
        [
            new PathBudget(path, freeSpaceDb, crossingsDb, lossDb)
            {
                Cautions = FreeSpaceLoss.CautionAt(length, Scene.Band.Equivalent) is string caution ? [caution] : [],
                Bases = [.. crossings.Select(c => c.Kind == ObstacleKind.Joists ? LossBasis.JoistShare : LossBasis.Listed)],
            },
        ];
    }

    internal override void Record(Point3 hands, double? facingDegrees, bool isSeatShared, IGradientRecorder recorder)
    {
        var buffer = new TraceBuffer();
        recorder.Begin(Decibels.ToPowerRatio(-LinkEvaluation.PathLossDb(Scene, Console, hands, buffer))); // shifts come before the greatest loss
        foreach (ref readonly Hit hit in buffer.Hits)
        {
            double tableDb = Scene.TableLossesDb[hit.Material];
            double moreDb = CrossingLoss.Db(hit.Kind, hit.Share, tableDb + LossGradients.StepDb) - CrossingLoss.Db(hit.Kind, hit.Share, tableDb);
            recorder.Add(hit.Material, hit.Mirror, moreDb / LossGradients.StepDb);
        }
    }
}
