using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Paths.Reflected;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Direct;

/// <summary>
/// The straight line, with what passes beside the obstacles near it. Where it runs along a surface, it and the reflection there interfere
/// (<see cref="SurfacesAlong"/>): each gets the share of their sum that it would have without interference.
/// </summary>
internal sealed class DirectPaths(TracedHouse house) : PathFinder, IPathSource
{
    private readonly SurfacesAlong surfaces = new(house);

    internal override bool AlwaysCounts => true;

    /// <inheritdoc/>
    public PathFinder From(Point3 start) => this;

    internal override void FindTo(in LinkEnds ends, double leastPower, TraceBuffer buffer, ref FoundPaths found) =>
        found.Add(Of(ends, buffer));

    private Found Of(in LinkEnds ends, TraceBuffer buffer)
    {
        if (ends.Start == ends.End)
        {
            buffer.PieceCount = buffer.SurfaceCount = 0;
            buffer.AlwaysPower = 1;
            return new Found(house, 1, 1);
        }

        surfaces.FindFor(ends, buffer);
        Gather(house, ends, FrontReach.Usual, buffer);
        double power = house.FreeSpaceRatio(ends.DistanceMetres) * FrontSum.PowerRatio(buffer.Pieces, house.Losses), factor = 1;
        foreach (ref SurfaceAlong surface in buffer.Surfaces)
        {
            surface = surface.Beside(power);
            factor *= surface.Factor;
        }

        buffer.AlwaysPower = power * factor;
        return new Found(house, power * factor * ends.BodyFactor(house.Body, ends.End, ends.Start), factor);
    }

    /// <summary>Writes the pieces in the front of a link's straight line into the buffer, which holds the surfaces along it.</summary>
    internal static void Gather(TracedHouse house, in LinkEnds ends, in FrontReach reach, TraceBuffer buffer)
    {
        house.Scene.Gather(new Ray(ends.Start, ends.End, house.WavelengthMetres, reach: reach), buffer);
        foreach (ref readonly SurfaceAlong surface in buffer.Surfaces)
        {
            Leave(buffer.Pieces, surface);
        }
    }

    // Takes a surface's panels out of the front, as far as it is a mirror beside the line.
    private static void Leave(Span<Piece> pieces, in SurfaceAlong surface)
    {
        if (surface.Fill > 0)
        {
            foreach (ref Piece piece in pieces)
            {
                piece.Beside += piece.Plane == surface.Mirror ? surface.Fill * (1 - piece.Beside) : 0;
            }
        }
    }

    private readonly record struct Found(TracedHouse House, double Power, double SurfacesFactor) : IFoundPath
    {
        public PathBudget Itemise(in LinkEnds ends, TraceBuffer buffer)
        {
            Crossing[] crossings = Itemisation.Crossings(House.Scene, ends.Start, ends.End, buffer, wholeFloors: true);
            var path = new TracedPath(PathKind.Direct, [ends.Start, ends.End], ends.DistanceMetres, crossings);
            return Itemisation.Budget(House, path, PathLoss.FromPowerRatio(Power), new PathItems
            {
                SurfacesDb = Decibels.LossFromPowerRatio(SurfacesFactor),
                BodyDb = ends.Start == ends.End ? 0 : Decibels.LossFromPowerRatio(ends.BodyFactor(House.Body, ends.End, ends.Start)),
            });
        }

        public void AddGradients(in LinkEnds ends, TraceBuffer buffer, LossGradients gradients) => gradients.AddFront(buffer.Pieces);
    }
}
