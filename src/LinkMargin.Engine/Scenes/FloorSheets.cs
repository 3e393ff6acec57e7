using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// What lies between one level and the next, as level sheets. A floor extends as far as the plan; only its voids are holes.
/// Each sheet is met at its own middle height, so a slanting line may clip a void's edge; the edge counts as floor.
/// </summary>
/// <param name="level">The level below.</param>
/// <param name="wavelengthMetres">λ.</param>
/// <param name="name">The build-up's name, by number.</param>
/// <param name="whole">Everything but the joists as one sheet at the floor's middle height.</param>
/// <param name="sheets">Layer by layer.</param>
/// <param name="voids">Holes.</param>
internal sealed class FloorSheets(
    int level,
    double wavelengthMetres,
    int name,
    FloorSheet whole,
    IReadOnlyList<FloorSheet> sheets,
    IReadOnlyList<Polygon> voids)
{
    private readonly FloorSheet[] asOne = [whole, .. sheets.Where(sheet => sheet.Ribs is not null)];

    private readonly FloorSheet[] sheets = [.. sheets];
    private readonly Polygon[] voids = [.. voids];

    /// <summary>Adds what the line crosses, layer by layer or as one sheet and its joists.</summary>
    internal void Trace(Point3 from, Point3 to, TraceBuffer buffer, bool wholeFloors)
    {
        double dz = to.Z - from.Z;
        double whole = from.DistanceTo(to);
        if (Math.Abs(dz) <= GeometryTolerances.ParallelSine * whole)
        {
            return;
        }

        foreach (FloorSheet sheet in wholeFloors ? asOne : sheets)
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
            hit.IsSolid = false;
            hit.Share = share;
            hit.Mirror = sheet.Ribs is null ? 0 : -1;
        }
    }

    /// <summary>Adds the pieces in the ray's front: the part that passes through a void meets nothing.</summary>
    internal void Gather(in Ray ray, TraceBuffer buffer)
    {
        double dz = ray.To.Z - ray.From.Z;
        foreach (FloorSheet sheet in asOne)
        {
            double t = (sheet.Height - ray.From.Z) / dz;
            if (!ray.Holds(t))
            {
                continue;
            }

            Point2 at = ray.PointAt(t).Plan;
            double share = sheet.Ribs is null ? 1 : Covered(sheet, ray.From, ray.To, t, at, ray.LengthMetres);
            buffer.NextPiece() = new Piece
            {
                Low = double.NegativeInfinity,
                High = double.PositiveInfinity,
                Bottom = double.NegativeInfinity,
                Top = double.PositiveInfinity,
                Plane = Piece.NoPlane,
                Material = sheet.Material,
                Beside = voids.Length == 0 ? 0 : VoidShare(ray, t, at),
                CosIncidence = Math.Abs(dz) / ray.LengthMetres,
                Share = share,
                IsRibs = sheet.Ribs is not null,
            };
        }
    }

    private double VoidShare(in Ray ray, double t, Point2 at)
    {
        double most = 0;
        foreach (Polygon hole in voids)
        {
            most = Math.Max(most, LevelPlate.Share(ray, t, hole.DepthOf(at)));
        }

        return most;
    }

    private bool InVoid(Point2 at)
    {
        foreach (Polygon hole in voids)
        {
            if (hole.Contains(at) && !hole.IsOnEdge(at, GeometryTolerances.SlackMetres))
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
            new RibRow(ribs.WidthMetres, ribs.DepthMetres, ribs.SpacingMetres),
            ribs.OffsetFromNearest(at));
    }
}

/// <summary>One level sheet of a floor: its middle height above the lowest floor, its material, its ribs if it is a joist bay.</summary>
internal sealed record FloorSheet(double Height, int Material, RibLayout? Ribs);

/// <summary>How the joists of a floor lie; the first offset is null where unknown.</summary>
internal sealed record RibLayout(
    double RunDegrees, double WidthMetres, double DepthMetres, double SpacingMetres, double? FirstOffsetMetres)
{
    /// <summary>Signed distance from the nearest joist's centre line, metres; null where the joists' positions are unknown.</summary>
    internal double? OffsetFromNearest(Point2 at) => FirstOffsetMetres is double first
        ? RibShare.OffsetMetres(at.X, at.Y, RunDegrees, first, SpacingMetres)
        : null;
}

/// <summary>A floor build-up without its joists as one material: its loss at normal incidence is the sum of its layers' losses.</summary>
internal static class WholeFloor
{
    internal static Material Of(FloorBuildUp buildUp)
    {
        Material[] materials = [.. buildUp.Layers.Select(layer => layer.Material).OfType<Material>()];
        bool isKnown = materials.All(material => material.Layers.Count > 0 || material.Dielectric is not null);
        return new Material(
            buildUp.Name,
            materials.Sum(material => material.LossDb),
            Math.Sqrt(materials.Sum(material => material.SpreadDb * material.SpreadDb)),
            buildUp.Source)
        {
            Description = buildUp.Description,
            ThicknessMetres = buildUp.ThicknessMetres,
            Layers = isKnown ? [.. buildUp.Layers.SelectMany(LayersOf)] : [],
        };
    }

    private static IEnumerable<Layer> LayersOf(FloorLayer layer) => layer.Material switch
    {
        null => [new Layer(null, "air", layer.ThicknessMetres, layer.ToleranceMetres)],
        { Layers.Count: > 0 } composite => composite.Layers,
        { } substance => [new Layer(substance.Dielectric, substance.Name, layer.ThicknessMetres, layer.ToleranceMetres)],
    };
}
