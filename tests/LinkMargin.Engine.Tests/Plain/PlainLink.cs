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
/// and fronts are summed a number at a time. Geometry (ends off surfaces, fronts, mirrors, diffracted paths) is the engine's own;
/// whether it is right is for the brute-force judges.
/// </summary>
internal static class PlainLink
{
    // What PathFinder leaves out, and fades in from.
    private const double LeastShare = 0.005;

    /// <summary>Path loss by all paths, dB.</summary>
    internal static double PathLossDb(FullSpotModel model, Point3 seat, double? facingDegrees)
    {
        Scene scene = model.Scene;
        double wavelength = scene.Band.Equivalent.WavelengthMetres;
        var buffer = new TraceBuffer();
        Point3 console = model.House.Standoff.Of(model.Console, ref buffer.Candidates), hands = model.House.Standoff.Of(seat, ref buffer.Candidates);
        var ends = new LinkEnds(console, hands, facingDegrees, IsPlayerAtStart: false);
        new SurfacesAlong(model.House).FindFor(ends, buffer);
        SurfaceAlong[] surfaces = [.. buffer.Surfaces];
        double straight = console.DistanceTo(hands), bare = Straight(FrontReach.Usual);
        double factors = surfaces.Aggregate(1.0, (product, surface) => product * FactorOf(surface.Mirror));
        double body = model.House.Body.Factor(console, hands, facingDegrees), direct = bare * body * factors;
        double bareEven = model.Finder<DiffusePaths>().Field.At(hands) * wavelength * wavelength / (4 * Math.PI);
        double even = bareEven * model.Finder<DiffusePaths>().Rooms.PlayerShare(model.Finder<DiffusePaths>().Rooms.Cells.At(hands));
        double least = (direct + even) * LeastShare, power = direct + even;
        foreach (UprightMirror mirror in scene.Uprights)
        {
            if (MirrorView.TryOf(mirror, console, hands, out MirrorView view))
            {
                power += Counted(InUpright(mirror, view, FrontReach.Usual), least) * FactorOf(mirror.Number);
            }
        }

        for (int i = 0; i < scene.Plates.Count; i++)
        {
            power += Counted(InLevel(i, FrontReach.Usual), least) * FactorOf(SurfaceAlong.OfPlate(i));
        }

        Span<DiffractedPath> paths = stackalloc DiffractedPath[DiffractedPaths.Most];
        double round = 0, inReach = 0;
        foreach (ref readonly DiffractedPath path in paths[..model.Finder<DiffractedPaths>().To(ends, least, buffer, paths)])
        {
            power += path.Power;
            round += path.Power / path.Body;
            double most = Math.Max(KnifeEdge.DetourMetres(console, path.FirstPlace, hands), KnifeEdge.DetourMetres(console, path.LastPlace, hands));
            inReach += path.Power / path.Body * (1 - FrontReach.Far.Apart(KnifeEdge.ParameterOfDetour(most, true, wavelength)));
        }

        // What far fronts bring more, from 25 dB below free space on.
        double sure = (bare * factors) + bareEven + round, far = Math.Max(0, Straight(FrontReach.Far) - bare) * factors;
        power += Counted(FarShare(straight) * (Math.Pow(Math.Pow(far, 4) + Math.Pow(inReach, 4), 0.25) - inReach) * body, least);
        foreach (UprightMirror mirror in scene.Uprights)
        {
            if (MirrorView.TryOf(mirror, console, hands, out MirrorView view))
            {
                double more = Math.Max(0, InUpright(mirror, view, FrontReach.Far) - InUpright(mirror, view, FrontReach.Usual));
                power += Counted(FarShare(view.LengthMetres) * more * FactorOf(mirror.Number), least);
            }
        }

        for (int i = 0; i < scene.Plates.Count; i++)
        {
            if (Mirror.InLevel(scene.Plates[i], ends, model.House, FrontReach.Usual, out Reflection reflection))
            {
                double more = Math.Max(0, InLevel(i, FrontReach.Far) - InLevel(i, FrontReach.Usual));
                power += Counted(FarShare(reflection.LengthMetres) * more * FactorOf(SurfaceAlong.OfPlate(i)), least);
            }
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

        double FarShare(double lengthMetres)
        {
            double clear = FreeSpaceLoss.PowerRatio(lengthMetres, wavelength), way = Math.Clamp(((-10 * Math.Log10(sure / clear)) - 25) / 10, 0, 1);
            return way * way * (3 - (2 * way));
        }

        double Straight(FrontReach reach)
        {
            scene.Gather(new Ray(console, hands, wavelength, reach: reach), buffer);
            foreach (ref Piece piece in buffer.Pieces)
            {
                int plane = piece.Plane;
                piece.Beside = 1 - ((1 - piece.Beside) * surfaces.Where(surface => surface.Mirror == plane).Aggregate(1.0, (left, surface) => left * (1 - surface.Fill)));
            }

            return FreeSpaceLoss.PowerRatio(straight, wavelength) * PlainFrontSum.PowerRatio(buffer.Pieces, model.House.Losses, reach);
        }

        double InUpright(UprightMirror mirror, MirrorView view, FrontReach reach) =>
            Mirror.InUpright(mirror, view, ends, model.House, reach, buffer, out Reflection reflection)
                ? PowerOf(reflection with { PowerRatio = Reflected(model, view.CosIncidence, buffer.Pieces, reach) }, reach)
                : 0;

        double InLevel(int plate, FrontReach reach) =>
            Mirror.InLevel(scene.Plates[plate], ends, model.House, reach, out Reflection reflection) ? PowerOf(reflection, reach) : 0;

        double PowerOf(in Reflection reflection, FrontReach reach) =>
            FreeSpaceLoss.PowerRatio(reflection.LengthMetres, wavelength)
            * reflection.PowerRatio
            * model.House.Body.Factor(reflection.Image, hands, facingDegrees)
            * Share(scene, model, reflection, hands, reach, buffer);
    }

    /// <summary>What the panels of a mirror reflect, by the pieces of it that a front meets.</summary>
    internal static double Reflected(FullSpotModel model, double cosIncidence, ReadOnlySpan<Piece> panels, FrontReach reach)
    {
        double[] amplitudes = new double[panels.Length];
        for (int i = 0; i < panels.Length; i++)
        {
            amplitudes[i] = Math.Sqrt(model.House.Losses[panels[i].Material].Reflectance(cosIncidence));
        }

        return PlainFrontSum.Reflected(panels, amplitudes, reach);
    }

    private static double Counted(double power, double least) => power * Math.Clamp((power / least) - 1, 0, 1);

    /// <summary>Share of a reflection's power that passes what stands in its way.</summary>
    internal static double Share(Scene scene, FullSpotModel model, in Reflection reflection, Point3 hands, FrontReach reach, TraceBuffer buffer)
    {
        double wavelength = scene.Band.Equivalent.WavelengthMetres;
        Ray there = reflection.There(model.Console, wavelength, reach), on = reflection.On(hands, wavelength, reach);
        scene.GatherFoldedLevels(there, on, reflection.Fold, buffer);
        scene.GatherFoldedUprights(there, on, reflection.Fold, buffer);
        return PlainFrontSum.PowerRatio(buffer.Pieces, model.House.Losses, reach);
    }
}
