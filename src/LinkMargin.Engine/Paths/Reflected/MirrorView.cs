using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Reflected;

/// <summary>How a path strikes an upright mirror.</summary>
/// <param name="Before">Distance of its start in front of the mirror, metres; below 0 on the side its normal points away from.</param>
/// <param name="After">The same for its end.</param>
/// <param name="Share">Where along the unfolded path it strikes, 0 to 1.</param>
/// <param name="LengthMetres">Length of the unfolded path, metres.</param>
/// <param name="PlanMetres">The same on the plan, metres.</param>
/// <param name="Slant">How far it runs along the mirror for each metre towards it, and for each metre away again.</param>
/// <param name="AlongMetres">Where along the mirror it strikes, metres.</param>
/// <param name="CosIncidence">Cosine of the angle to the mirror's normal.</param>
internal readonly record struct MirrorView(
    double Before,
    double After,
    double Share,
    double LengthMetres,
    double PlanMetres,
    double Slant,
    double AlongMetres,
    double CosIncidence)
{
    /// <summary>Scale of the front at the mirror along it: v per metre.</summary>
    /// <param name="wavelengthMetres">λ.</param>
    internal double AlongScale(double wavelengthMetres) =>
        Math.Sqrt(2 / (wavelengthMetres * LengthMetres * Share * (1 - Share))) * Math.Abs(Before + After) / PlanMetres;

    /// <summary>How a path between two places strikes a mirror; false unless both are clear of it on one side that reflects.</summary>
    internal static bool TryOf(UprightMirror mirror, Point3 from, Point3 to, out MirrorView view)
    {
        double before = mirror.Before(from.X, from.Y), after = mirror.Before(to.X, to.Y);
        if (Math.Min(Math.Abs(before), Math.Abs(after)) <= GeometryTolerances.SlackMetres || before > 0 != after > 0 || before * mirror.OnlySide < 0)
        {
            view = default;
            return false;
        }

        double start = mirror.Along(from.X, from.Y), onwards = mirror.Along(to.X, to.Y) - start, rise = to.Z - from.Z;
        double approach = Math.Abs(before + after), plan = Math.Sqrt((approach * approach) + (onwards * onwards));
        double length = Math.Sqrt((plan * plan) + (rise * rise)), share = before / (before + after);
        view = new MirrorView(before, after, share, length, plan, onwards / approach, start + (share * onwards), Math.Min(1, approach / length));
        return true;
    }
}
