using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Paths.Diffracted;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Paths.Reflected;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Plain;

/// <summary>
/// Equivalence reference of a link of the full model, to 1e-9 dB: every mirror is computed to the end, none left out by a bound,
/// and fronts are summed a number at a time. Geometry (fronts, mirrors, diffracted paths) is the engine's own;
/// whether it is right is for the brute-force judges.
/// </summary>
internal static class PlainLink
{
    // What PathFinder leaves out, and fades in from.
    private const double LeastShare = 0.005;

    /// <summary>Path loss by all paths, dB.</summary>
    internal static double PathLossDb(FullSpotModel model, Point3 hands, double? facingDegrees)
    {
        Scene scene = model.Scene;
        double wavelength = scene.Band.Equivalent.WavelengthMetres;
        var ends = new LinkEnds(model.Console, hands, facingDegrees, IsPlayerAtStart: false);
        var buffer = new TraceBuffer();
        new SurfacesAlong(model.House).FindFor(ends, buffer);
        SurfaceAlong[] surfaces = [.. buffer.Surfaces];
        var ray = new Ray(model.Console, hands, wavelength);
        scene.Gather(ray, buffer);
        foreach (ref Piece piece in buffer.Pieces)
        {
            int plane = piece.Plane;
            piece.Beside = 1 - ((1 - piece.Beside) * surfaces.Where(surface => surface.Mirror == plane).Aggregate(1.0, (left, surface) => left * (1 - surface.Fill)));
        }

        double bare = FreeSpaceLoss.PowerRatio(ray.LengthMetres, wavelength) * PlainFrontSum.PowerRatio(buffer.Pieces, model.House.Losses);
        double direct = bare * model.House.Body.Factor(model.Console, hands, facingDegrees)
            * surfaces.Aggregate(1.0, (product, surface) => product * FactorOf(surface.Mirror));
        double even = model.Finder<DiffusePaths>().Field.At(hands) * wavelength * wavelength / (4 * Math.PI)
            * model.Finder<DiffusePaths>().Rooms.PlayerShare(model.Finder<DiffusePaths>().Rooms.Cells.At(hands));
        double least = (direct + even) * LeastShare, power = direct + even;
        foreach (UprightMirror mirror in scene.Uprights)
        {
            if (MirrorView.TryOf(mirror, model.Console, hands, out MirrorView view)
                && Mirror.InUpright(mirror, view, ends, model.House, buffer, out Reflection reflection))
            {
                Reflection whole = reflection with { PowerRatio = Reflected(model, view.CosIncidence, buffer.Pieces) };
                power += Counted(PowerOf(whole), least) * FactorOf(mirror.Number);
            }
        }

        for (int i = 0; i < scene.Plates.Count; i++)
        {
            if (Mirror.InLevel(scene.Plates[i], ends, model.House, out Reflection reflection))
            {
                power += Counted(PowerOf(reflection), least) * FactorOf(SurfaceAlong.OfPlate(i));
            }
        }

        Span<DiffractedPath> paths = stackalloc DiffractedPath[DiffractedPaths.Most];
        foreach (ref readonly DiffractedPath path in paths[..model.Finder<DiffractedPaths>().To(ends, least, buffer, paths)])
        {
            power += path.Power;
        }

        return Math.Min(LayeredSlab.GreatestLossDb, -10 * Math.Log10(power));

        // Both waves and what they have in step, over the sum of both; how far they are in step is for TwoRayTests.
        double FactorOf(int mirror)
        {
            double factor = 1;
            foreach (SurfaceAlong surface in surfaces.Where(surface => surface.Mirror == mirror))
            {
                double both = bare + (surface.BarePower * (1 + surface.More)) + (2 * Math.Sqrt(bare * surface.BarePower) * surface.InStep);
                factor = Math.Max(1e-6, both / (bare + surface.BarePower));
            }

            return factor;
        }

        double PowerOf(in Reflection reflection) =>
            FreeSpaceLoss.PowerRatio(reflection.LengthMetres, wavelength)
            * reflection.PowerRatio
            * model.House.Body.Factor(reflection.Image, hands, facingDegrees)
            * Share(scene, model, reflection, hands, buffer);
    }

    /// <summary>What the panels of a mirror reflect, by the pieces of it that a front meets.</summary>
    internal static double Reflected(FullSpotModel model, double cosIncidence, ReadOnlySpan<Piece> panels)
    {
        double[] amplitudes = new double[panels.Length];
        for (int i = 0; i < panels.Length; i++)
        {
            amplitudes[i] = Math.Sqrt(model.House.Losses[panels[i].Material].Reflectance(cosIncidence));
        }

        return PlainFrontSum.Reflected(panels, amplitudes);
    }

    private static double Counted(double power, double least) => power * Math.Clamp((power / least) - 1, 0, 1);

    /// <summary>Share of a reflection's power that passes what stands in its way.</summary>
    internal static double Share(Scene scene, FullSpotModel model, in Reflection reflection, Point3 hands, TraceBuffer buffer)
    {
        double wavelength = scene.Band.Equivalent.WavelengthMetres;
        Ray there = reflection.There(model.Console, wavelength), on = reflection.On(hands, wavelength);
        scene.GatherFoldedLevels(there, on, reflection.Fold, buffer);
        scene.GatherFoldedUprights(there, on, reflection.Fold, buffer);
        return PlainFrontSum.PowerRatio(buffer.Pieces, model.House.Losses);
    }
}
