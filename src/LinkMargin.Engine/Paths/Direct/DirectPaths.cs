using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Direct;

/// <summary>The straight line, with what passes beside the obstacles near it.</summary>
internal sealed class DirectPaths(TracedHouse house) : PathFinder, IPathSource
{
    internal override bool AlwaysCounts => true;

    /// <inheritdoc/>
    public PathFinder From(Point3 start) => this;

    internal override void FindTo(in LinkEnds ends, double leastPower, TraceBuffer buffer, ref FoundPaths found) =>
        found.Add(new Found(house, Power(ends, buffer)));

    private double Power(in LinkEnds ends, TraceBuffer buffer)
    {
        if (ends.Start == ends.End)
        {
            buffer.PieceCount = 0;
            return 1;
        }

        var ray = new Ray(ends.Start, ends.End, house.WavelengthMetres);
        house.Scene.Gather(ray, buffer);
        return house.FreeSpaceRatio(ray.LengthMetres)
            * FrontSum.PowerRatio(buffer.Pieces, house.Losses)
            * ends.BodyFactor(house.Body, ends.End, ends.Start);
    }

    private readonly record struct Found(TracedHouse House, double Power) : IFoundPath
    {
        public PathBudget Itemise(in LinkEnds ends, TraceBuffer buffer)
        {
            Crossing[] crossings = Itemisation.Crossings(House.Scene, ends.Start, ends.End, buffer, wholeFloors: true);
            var path = new TracedPath(PathKind.Direct, [ends.Start, ends.End], ends.DistanceMetres, crossings);
            return Itemisation.Budget(House, path, PathLoss.FromPowerRatio(Power), new PathItems
            {
                BodyDb = ends.Start == ends.End ? 0 : Decibels.LossFromPowerRatio(ends.BodyFactor(House.Body, ends.End, ends.Start)),
            });
        }

        public void AddGradients(in LinkEnds ends, TraceBuffer buffer, LossGradients gradients) => gradients.AddFront(buffer.Pieces);
    }
}
