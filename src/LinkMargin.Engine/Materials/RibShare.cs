namespace LinkMargin.Engine.Materials;

/// <summary>
/// Share of the first Fresnel zone that parallel ribs (studs, joists) cover. Own derivation; no Recommendation gives one.
/// <para>
/// The zone is a disc of radius R perpendicular to the ray. Projected along the ray onto the ribs' plane it becomes an ellipse.
/// Only the axis across the ribs matters: with tan θ⊥ = |across|/|through| (the ray's direction in the plane perpendicular to
/// the run) the ellipse reaches a = R/cos θ⊥ along it, and its area is distributed along that axis as a disc's is along a
/// diameter. So a strip between c1 and c2 holds F(c2/a) − F(c1/a) of it, where F(u) = 1/2 + (asin u + u·√(1 − u²))/π is the
/// circular segment's share. A rib of width w and depth h casts a shadow of w + h·tan θ⊥ on its own mid plane, never more than
/// the spacing s. The sum over all ribs is the share, exactly. Averaged over all positions of the ribs it is shadow/s, whatever
/// the size of the zone.
/// </para>
/// </summary>
public static class RibShare
{
    /// <summary>
    /// Most ribs on each side of the ray that are summed one by one. A zone that reaches farther than this many spacings covers
    /// so many ribs that their position changes the share by less than 1e-6 (the k-th Fourier term of the sum falls with
    /// (k·a/s)^−1.5), and the mean over positions is returned.
    /// </summary>
    public const int MostRibsEachSide = 5000;

    /// <summary>Share covered by the joists of a level floor.</summary>
    /// <param name="zoneRadiusMetres">
    /// R, radius of the first Fresnel zone where the ray meets the joists, metres, 0 or more.
    /// </param>
    /// <param name="dx">East component of the ray's direction; any length above 0.</param>
    /// <param name="dy">North component.</param>
    /// <param name="dz">Upward component; the sign plays no part.</param>
    /// <param name="runDegrees">Direction along a joist, degrees anticlockwise from the x axis.</param>
    /// <param name="ribs">The joists.</param>
    /// <param name="offsetMetres">
    /// From a joist's centre line to where the ray passes the joists' mid plane, metres across the run, any sign and any joist
    /// (<see cref="OffsetMetres"/>); null where the joists' position is unknown: the mean over all positions.
    /// </param>
    /// <returns>0 to 1. 1 for a ray so flat that no gap can be seen through.</returns>
    public static double Covered(
        double zoneRadiusMetres,
        double dx,
        double dy,
        double dz,
        double runDegrees,
        RibRow ribs,
        double? offsetMetres)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(runDegrees));
        double across = (dy * cos) - (dx * sin);
        return CoveredAcross(zoneRadiusMetres, across, dz, ribs, offsetMetres);
    }

    /// <summary>Share covered by ribs in any plane, such as the studs of a wall.</summary>
    /// <param name="zoneRadiusMetres">
    /// R, radius of the first Fresnel zone where the ray meets the ribs, metres, 0 or more.
    /// </param>
    /// <param name="across">
    /// Component of the ray's direction in the ribs' plane, perpendicular to their run; the sign plays no part.
    /// </param>
    /// <param name="through">Component along the plane's normal, in the same unit; the sign plays no part.</param>
    /// <param name="ribs">The ribs.</param>
    /// <param name="offsetMetres">
    /// From a rib's centre line to the ray, metres; null where unknown: the mean over all positions.
    /// </param>
    /// <returns>
    /// 0 to 1. Where both components are 0 the ray runs along the ribs inside their plane and the share is that of a ray
    /// straight through.
    /// </returns>
    public static double CoveredAcross(
        double zoneRadiusMetres,
        double across,
        double through,
        RibRow ribs,
        double? offsetMetres)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(zoneRadiusMetres);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(ribs.WidthMetres);
        ArgumentOutOfRangeException.ThrowIfNegative(ribs.DepthMetres);
        ArgumentOutOfRangeException.ThrowIfLessThan(ribs.SpacingMetres, ribs.WidthMetres);

        double tan = across == 0 ? 0 : Math.Abs(across / through); // +∞ for a ray inside the plane and across it
        double shadow = ShadowMetres(ribs.WidthMetres, ribs.DepthMetres, tan);
        if (shadow >= ribs.SpacingMetres)
        {
            return 1;
        }

        double reach = zoneRadiusMetres == 0 ? 0 : zoneRadiusMetres * double.Hypot(1, tan); // a = R/cos θ⊥
        return offsetMetres is not { } offset || reach > MostRibsEachSide * ribs.SpacingMetres
            ? shadow / ribs.SpacingMetres
            : SumOverRibs(reach, shadow, ribs.SpacingMetres, offset);
    }

    /// <summary>
    /// How far a point lies from the joists' nearest centre line, metres, −s/2 to s/2, left of the run positive.
    /// </summary>
    /// <param name="x">East, metres, on the plan the joists' offset is measured on.</param>
    /// <param name="y">North, metres.</param>
    /// <param name="runDegrees">Direction along a joist, degrees anticlockwise from the x axis.</param>
    /// <param name="firstOffsetMetres">
    /// One joist's centre line from the plan's origin, metres, left of the run positive.
    /// </param>
    /// <param name="spacingMetres">s, distance between centres, metres, above 0.</param>
    public static double OffsetMetres(double x, double y, double runDegrees, double firstOffsetMetres, double spacingMetres)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(spacingMetres);
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(runDegrees));
        return Math.IEEERemainder((y * cos) - (x * sin) - firstOffsetMetres, spacingMetres);
    }

    /// <summary>w + h·tan θ⊥; the product is taken as 0 for ribs of no depth, however flat the ray.</summary>
    private static double ShadowMetres(double widthMetres, double depthMetres, double tan) =>
        depthMetres == 0 ? widthMetres : widthMetres + (depthMetres * tan);

    private static double SumOverRibs(double reach, double shadow, double spacing, double offset)
    {
        // The ray is the origin; rib k has its centre at k·s − offset.
        double nearest = Math.IEEERemainder(offset, spacing);
        int ribs = (int)Math.Ceiling((reach + (shadow / 2)) / spacing) + 1;
        double covered = 0;
        for (int k = -ribs; k <= ribs; k++)
        {
            double centre = (k * spacing) - nearest;
            covered += ShareBelow(centre + (shadow / 2), reach) - ShareBelow(centre - (shadow / 2), reach);
        }

        return Math.Clamp(covered, 0, 1);
    }

    /// <summary>
    /// F: the share of the zone on the near side of a line at c, −a..a; a zone of no size is a step with 1/2 on the line.
    /// </summary>
    private static double ShareBelow(double c, double reach)
    {
        if (Math.Abs(c) >= reach)
        {
            return (1 + Math.Sign(c)) / 2.0;
        }

        double u = c / reach;
        return 0.5 + ((Math.Asin(u) + (u * Math.Sqrt(1 - (u * u)))) / Math.PI);
    }
}

/// <summary>Ribs in a row: studs or joists.</summary>
/// <param name="WidthMetres">w, width of a rib, metres, above 0.</param>
/// <param name="DepthMetres">h, depth of a rib, metres, 0 or more.</param>
/// <param name="SpacingMetres">s, distance between centres, metres, not below the width.</param>
public readonly record struct RibRow(double WidthMetres, double DepthMetres, double SpacingMetres);
