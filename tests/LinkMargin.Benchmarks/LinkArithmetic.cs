using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Paths.Reflected;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Benchmarks;

/// <summary>
/// About how many operations a link of the full model takes, counted from what it looks at: an estimate to set against what a
/// core could do.
/// </summary>
internal static class LinkArithmetic
{
    // Read off the code: a mirror's images and bound; a piece with its panel's front, its ends and its heights; an edge's wave; and
    // for each piece with each strip of its front two comparisons and a product.
    private const int EachMirror = 60;
    private const int EachPiece = 100;
    private const int EachEdge = 40;
    private const int EachPieceInAStrip = 3;

    /// <summary>The mean over places.</summary>
    internal static double Operations(FullSpotModel model, IReadOnlyCollection<Point3> places)
    {
        var buffer = new TraceBuffer();
        return places.Average(place => Of(model, place, buffer));
    }

    private static double Of(FullSpotModel model, Point3 hands, TraceBuffer buffer)
    {
        Scene scene = model.Scene;
        double wavelength = scene.Band.Equivalent.WavelengthMetres;
        scene.Gather(new Ray(model.Console, hands, wavelength), buffer);
        double operations = Front(buffer) + (EachMirror * scene.Uprights.Length);
        double direct = FreeSpaceLoss.PowerRatio(model.Console.DistanceTo(hands), wavelength)
            * FrontSum.PowerRatio(buffer.Pieces, model.House.Losses);
        double least = PathFinder.LeastShare * (direct + (model.Finder<DiffusePaths>().Field.At(hands) * wavelength * wavelength / (4 * Math.PI)));
        foreach (UprightMirror mirror in scene.Uprights)
        {
            if (MirrorView.TryOf(mirror, model.Console, hands, out MirrorView view)
                && Mirror.InUpright(mirror, view, new LinkEnds(model.Console, hands, null, false), model.House, FrontReach.Usual, buffer, out Reflection reflection)
                && FreeSpaceLoss.PowerRatio(reflection.LengthMetres, wavelength) * reflection.PowerRatio > least)
            {
                Ray there = reflection.There(model.Console, wavelength, FrontReach.Usual), on = reflection.On(hands, wavelength, FrontReach.Usual);
                operations += Front(buffer);
                scene.GatherFoldedLevels(there, on, reflection.Fold, buffer);
                scene.GatherFoldedUprights(there, on, reflection.Fold, buffer);
                operations += Front(buffer);
            }
        }

        return operations;
    }

    private static double Front(TraceBuffer buffer)
    {
        double pieces = buffer.PieceCount;
        return ((EachPiece + EachEdge) * pieces) + (EachPieceInAStrip * pieces * pieces);
    }
}
