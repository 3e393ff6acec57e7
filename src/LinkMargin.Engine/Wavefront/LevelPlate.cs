namespace LinkMargin.Engine.Wavefront;

/// <summary>A level plate, or a hole in one, in a ray's wave front.</summary>
internal static class LevelPlate
{
    /// <summary>
    /// Share of the amplitude that falls inside the plate's outline, by its nearest edge: what passes a single edge inside the
    /// outline, and what is diffracted outside. On the plate the front is an ellipse, R1 wide and R1 / sin(slope) long; their
    /// geometric mean is used, whichever way the edge runs.
    /// </summary>
    /// <param name="ray">The ray.</param>
    /// <param name="t">Where it crosses the plate, share of its length.</param>
    /// <param name="depthMetres">How far inside the outline that is; below 0 outside.</param>
    internal static double Share(in Ray ray, double t, double depthMetres) =>
        EdgeKernel.Past(-DepthInFront(ray, t, depthMetres), ray.Reach);

    /// <summary>
    /// How far a small plate obstructs the ray: inside its outline as <see cref="Share"/>; a ray that passes beside it is lit
    /// and loses almost nothing, and nothing at all where the edge is clear of the line. So a plate matters only close by, and
    /// it makes no difference which others are examined.
    /// </summary>
    internal static double Shade(in Ray ray, double t, double depthMetres) =>
        depthMetres >= 0 ? Share(ray, t, depthMetres)
        : depthMetres >= -ray.ReachMetres ? 1 - EdgeKernel.Past(DepthInFront(ray, t, depthMetres), ray.Reach)
        : 0;

    // The depth as v.
    private static double DepthInFront(in Ray ray, double t, double depthMetres)
    {
        double sinSlope = Math.Abs(ray.To.Z - ray.From.Z) / ray.LengthMetres;
        double radius = ray.RadiusAt(t) / Math.Sqrt(sinSlope);
        return Math.Sqrt(2) * depthMetres / radius;
    }
}
