using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Around;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Tests.Plain;

/// <summary>
/// The judge of a link of the full model: every mirror is looked at to the end, none left out because it looks hopeless, and
/// fronts are summed a number at a time.
/// </summary>
internal static class PlainLink
{
    /// <summary>Path loss by all paths but the ways round, dB.</summary>
    internal static double PathLossDb(FullSpotModel model, Point3 hands, double? facingDegrees)
    {
        Scene scene = model.Scene;
        double wavelength = scene.Band.Equivalent.WavelengthMetres;
        var buffer = new TraceBuffer();
        var ray = new Ray(model.Console, hands, wavelength);
        scene.Gather(ray, buffer);
        double direct = FreeSpaceLoss.PowerRatio(ray.LengthMetres, wavelength)
            * PlainFrontSum.PowerRatio(buffer.Pieces, model.Losses)
            * model.Body.Factor(model.Console, hands, facingDegrees);
        double even = model.Diffuse.At(hands) * wavelength * wavelength / (8 * Math.PI) * model.Body.Diffuse;
        double least = (direct + even) * FullSpotModel.LeastShare, power = direct + even;
        foreach (UprightMirror mirror in scene.Uprights)
        {
            if (MirrorView.TryOf(mirror, model.Console, hands, out MirrorView view)
                && Mirror.InUpright(mirror, view, model.Console, hands, wavelength, model.Losses, buffer, out Reflection reflection))
            {
                power += FullSpotModel.Counted(Reflected(reflection), least);
            }
        }

        foreach (LevelMirror mirror in scene.Plates)
        {
            if (Mirror.InLevel(mirror, model.Console, hands, wavelength, model.Losses, out Reflection reflection))
            {
                power += FullSpotModel.Counted(Reflected(reflection), least);
            }
        }

        Span<WayRound> ways = stackalloc WayRound[WaysRound.Most];
        foreach (ref readonly WayRound way in ways[..model.WaysRound.To(hands, facingDegrees, least, buffer, ways)])
        {
            power += way.Power;
        }

        return FullSpotModel.ToLossDb(power);

        double Reflected(in Reflection reflection) =>
            FreeSpaceLoss.PowerRatio(reflection.LengthMetres, wavelength)
            * reflection.PowerRatio
            * model.Body.Factor(reflection.Image, hands, facingDegrees)
            * Share(scene, model, reflection, hands, buffer);
    }

    /// <summary>Share of a reflection's power that passes what stands in its way.</summary>
    internal static double Share(Scene scene, FullSpotModel model, in Reflection reflection, Point3 hands, TraceBuffer buffer)
    {
        double wavelength = scene.Band.Equivalent.WavelengthMetres;
        Ray there = reflection.There(model.Console, wavelength), on = reflection.On(hands, wavelength);
        scene.GatherFoldedLevels(there, on, buffer);
        scene.GatherFoldedUprights(there, on, reflection.Fold, buffer);
        return PlainFrontSum.PowerRatio(buffer.Pieces, model.Losses);
    }
}
