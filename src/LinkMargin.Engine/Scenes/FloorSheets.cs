using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Propagation;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// What lies between one level and the next, as level sheets. A floor reaches as far as the plan goes; only its voids are
/// holes. Each sheet is met at its own middle height, so a slanting line may clip a void's edge; the edge is floor.
/// </summary>
internal sealed class FloorSheets(
    int level, double wavelengthMetres, int name, IReadOnlyList<FloorSheet> sheets, IReadOnlyList<Polygon> voids)
{
    private readonly FloorSheet[] sheets = [.. sheets];
    private readonly Polygon[] voids = [.. voids];

    /// <summary>Adds what the line meets.</summary>
    internal void Trace(Point3 from, Point3 to, TraceBuffer buffer)
    {
        double dz = to.Z - from.Z;
        double whole = from.DistanceTo(to);
        if (Math.Abs(dz) <= Touching.ParallelSine * whole)
        {
            return;
        }

        foreach (FloorSheet sheet in sheets)
        {
            if (from.Z < sheet.Height == to.Z < sheet.Height)
            {
                continue;
            }

            double t = Math.Abs((sheet.Height - from.Z) / dz); // never below 0, but an end on the sheet gives −0
            Point2 at = from.Towards(to, t).Plan;
            if (InVoid(at))
            {
                continue;
            }

            double share = sheet.Ribs is null ? 1 : Covered(sheet, from, to, t, at, whole);
            if (share == 0)
            {
                continue;
            }

            ref Hit hit = ref buffer.Next();
            hit.Along = t;
            hit.Name = name;
            hit.Material = sheet.Material;
            hit.Level = level;
            hit.Kind = sheet.Ribs is null ? ObstacleKind.FloorLayer : ObstacleKind.Joists;
            hit.CosIncidence = Math.Abs(dz) / whole;
            hit.Share = share;
        }
    }

    private bool InVoid(Point2 at)
    {
        foreach (Polygon hole in voids)
        {
            if (hole.Contains(at) && !hole.IsOnEdge(at, Touching.SlackMetres))
            {
                return true;
            }
        }

        return false;
    }

    private double Covered(FloorSheet sheet, Point3 from, Point3 to, double t, Point2 at, double whole)
    {
        RibLayout ribs = sheet.Ribs!;
        double radius = FresnelZone.FirstRadiusMetres(wavelengthMetres, t * whole, (1 - t) * whole);
        return RibShare.Covered(
            radius,
            to.X - from.X,
            to.Y - from.Y,
            to.Z - from.Z,
            ribs.RunDegrees,
            ribs.WidthMetres,
            ribs.DepthMetres,
            ribs.SpacingMetres,
            ribs.OffsetFromNearest(at));
    }
}
