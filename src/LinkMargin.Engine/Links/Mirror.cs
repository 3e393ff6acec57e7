using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Links;

/// <summary>
/// First-order reflections of one console's energy, by images. A mirror's panels throw back amplitudes by the share of the
/// first Fresnel zone they fill, so a reflection fades at the edge of a wall and a wall in two parts is one mirror.
/// </summary>
internal static class Mirror
{
    /// <summary>A panel that fills less of the zone throws back nothing worth a look.</summary>
    private const double LeastAmplitude = 1e-3;

    /// <summary>The geometry of a reflection in an upright mirror; false where both ends do not lie clear of it on one side.</summary>
    internal static bool InUpright(
        UprightMirror mirror, Point3 from, Point3 to, double wavelengthMetres, LossTables losses, out Reflection reflection)
    {
        reflection = default;
        double before = mirror.Before(from.X, from.Y), after = mirror.Before(to.X, to.Y);
        if (Math.Min(Math.Abs(before), Math.Abs(after)) <= Touching.SlackMetres || before > 0 != after > 0)
        {
            return false;
        }

        Point3 image = new(from.X - (2 * before * mirror.NormalX), from.Y - (2 * before * mirror.NormalY), from.Z);
        Point3 imageOfEnd = new(to.X - (2 * after * mirror.NormalX), to.Y - (2 * after * mirror.NormalY), to.Z);
        double t = before / (before + after);
        double length = image.DistanceTo(to), plan = image.Plan.DistanceTo(to.Plan);
        double radius = Math.Sqrt(wavelengthMetres * length * t * (1 - t));
        double approach = Math.Abs(before + after);

        // On the wall the zone is stretched along it by the angle on the plan, and up and down by the slope.
        double alongScale = Math.Sqrt(2) * (approach / plan) / radius;
        double upScale = Math.Sqrt(2) * (plan / length) / radius;
        double s = mirror.Along(from.X, from.Y);
        s += t * (mirror.Along(to.X, to.Y) - s);
        double z = from.Z + (t * (to.Z - from.Z));
        double cosine = Math.Min(1, approach / length);
        double amplitude = 0;
        foreach (MirrorPanel panel in mirror.Panels)
        {
            double reach = EdgeKernel.Reach / alongScale;
            if (panel.From > s + reach || panel.To < s - reach)
            {
                continue;
            }

            double whole = Thrown(panel.Material, cosine, losses);
            amplitude += whole
                * EdgeKernel.Between((panel.From - s) * alongScale, (panel.To - s) * alongScale)
                * EdgeKernel.Between((panel.Low - z) * upScale, (panel.High - z) * upScale);
            foreach (OpeningPanel opening in panel.Openings)
            {
                amplitude += (Thrown(opening.Filling, cosine, losses) - whole)
                    * EdgeKernel.Between((opening.From - s) * alongScale, (opening.To - s) * alongScale)
                    * EdgeKernel.Between((opening.Low - z) * upScale, (opening.High - z) * upScale);
            }
        }

        if (amplitude < LeastAmplitude)
        {
            return false;
        }

        reflection = new Reflection(image, imageOfEnd, image.Towards(to, t), t, length, cosine, amplitude * amplitude, mirror.Number);
        return true;
    }

    /// <summary>The geometry of a reflection in a floor or ceiling; false where both ends do not lie on its face's side.</summary>
    internal static bool InLevel(
        LevelMirror mirror, Point3 from, Point3 to, double wavelengthMetres, LossTables losses, out Reflection reflection)
    {
        reflection = default;
        double sign = mirror.FacesUp ? 1 : -1;
        double before = sign * (from.Z - mirror.Height), after = sign * (to.Z - mirror.Height);
        if (!(before > 0 && after > 0))
        {
            return false;
        }

        Point3 image = new(from.X, from.Y, (2 * mirror.Height) - from.Z);
        Point3 imageOfEnd = new(to.X, to.Y, (2 * mirror.Height) - to.Z);
        double t = before / (before + after), length = image.DistanceTo(to);
        double cosine = Math.Min(1, (before + after) / length);
        double amplitude = Thrown(mirror.Material, cosine, losses);
        if (mirror.Voids.Count > 0)
        {
            var ray = new Ray(image, to, wavelengthMetres);
            Point2 at = ray.PointAt(t).Plan;
            amplitude *= 1 - mirror.Voids.Max(hole => LevelPlate.Share(ray, t, hole.DepthOf(at)));
        }

        if (amplitude < LeastAmplitude)
        {
            return false;
        }

        reflection = new Reflection(image, imageOfEnd, image.Towards(to, t), t, length, cosine, amplitude * amplitude, -1);
        return true;
    }

    private static double Thrown(int material, double cosine, LossTables losses) =>
        material < 0 ? 0 : Math.Sqrt(losses[material].Reflectance(cosine));
}
