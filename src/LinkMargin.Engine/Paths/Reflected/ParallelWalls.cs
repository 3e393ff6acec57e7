using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Reflected;

/// <summary>
/// Upper bound of a reflection's power, so that a hopeless one is dropped before its wavefront is collected. Both its legs cross
/// the walls that are parallel to the mirror and stand between it and the ends. Where such walls close off the whole front, the
/// path keeps no more than what the panel with the least loss passes at its angle: no mean is above what that strip alone would
/// give. So what is dropped here would not have counted anyway.
/// </summary>
internal sealed class ParallelWalls
{
    // Rounding of a product that is compared with one computed in another order.
    private const double Rounding = 1 + 1e-9;

    // Closer to a wall than this the rules of touching decide, metres.
    private const double ClearMetres = 1e-4;

    // Normals that differ by less than this point the same way.
    private const double SameDirection = 1e-9;

    private readonly LossTables losses;
    private readonly int[][] materials; // of each mirror
    private readonly int[] directions; // of each mirror, by number
    private readonly (double Low, double High, WallScreen[][] ByDirection)[] storeys;

    internal ParallelWalls(Scene scene, LossTables losses)
    {
        this.losses = losses;
        materials = [.. scene.Uprights.Select(mirror => mirror.Panels
            .SelectMany(panel => panel.Openings.Select(opening => opening.Filling).Append(panel.Material))
            .Where(material => material >= 0)
            .Distinct()
            .ToArray())];
        var first = new List<UprightMirror>();
        directions = new int[scene.Uprights.Length];
        foreach (UprightMirror mirror in scene.Uprights)
        {
            int direction = first.FindIndex(other => IsAlong(other, mirror));
            directions[mirror.Number] = direction < 0 ? first.Count : direction;
            if (direction < 0)
            {
                first.Add(mirror);
            }
        }

        ILookup<int, UprightMirror> walls = scene.Uprights.Where(mirror => !mirror.IsFixture).ToLookup(mirror => directions[mirror.Number]);
        storeys = [.. scene.Storeys.Select(storey => (storey.Low + VerticalExtent.SameMetres, storey.High - VerticalExtent.SameMetres, first
            .Select((_, i) => walls[i]
                .Select(mirror => new WallScreen(mirror, storey))
                .Where(screen => !screen.IsEmpty)
                .OrderBy(screen => screen.Offset)
                .ToArray())
            .ToArray()))];
    }

    /// <summary>The most of a reflection's power that can arrive, apart from free space and the player's body.</summary>
    /// <param name="mirror">The mirror.</param>
    /// <param name="view">How the path strikes it.</param>
    /// <param name="from">Its start.</param>
    /// <param name="to">Its end.</param>
    /// <param name="wavelengthMetres">λ.</param>
    /// <param name="least">A share below which the exact value does not matter.</param>
    /// <param name="reach">How far out the path's front reaches.</param>
    internal double Most(
        UprightMirror mirror, in MirrorView view, Point3 from, Point3 to, double wavelengthMetres, double least, in FrontReach reach)
    {
        double most = Rounding * Reflected(mirror, view.CosIncidence);
        double low = Math.Min(from.Z, to.Z), high = Math.Max(from.Z, to.Z);
        foreach ((double bottom, double top, WallScreen[][] byDirection) in storeys)
        {
            if (low >= bottom && high <= top)
            {
                return most * Past(byDirection[directions[mirror.Number]], mirror.Offset, view, wavelengthMetres, least / most, reach);
            }
        }

        return most;
    }

    private static bool IsAlong(UprightMirror one, UprightMirror other) =>
        Math.Abs(one.NormalX - other.NormalX) <= SameDirection && Math.Abs(one.NormalY - other.NormalY) <= SameDirection;

    private double Reflected(UprightMirror mirror, double cosine)
    {
        double most = 0;
        foreach (int material in materials[mirror.Number])
        {
            most = Math.Max(most, losses[material].Reflectance(cosine));
        }

        return most;
    }

    // Share of power that the walls in front of a mirror leave.
    private double Past(WallScreen[] screens, double offset, in MirrorView view, double wavelengthMetres, double least, in FrontReach reaches)
    {
        double before = Math.Abs(view.Before), after = Math.Abs(view.After), farthest = Math.Max(before, after) - ClearMetres;

        // The front at its widest, stretched along walls that it strikes at an angle.
        double reach = Ray.WidestReachMetres(wavelengthMetres * view.LengthMetres, reaches);
        double stretch = (reach * view.PlanMetres / (before + after)) + ClearMetres, most = 1;
        int side = view.Before > 0 ? 1 : -1;
        for (int i = WallScreen.FirstFrom(screens, offset, side); i >= 0 && i < screens.Length && most > least; i += side)
        {
            double away = side * (screens[i].Offset - offset);
            if (away >= farthest)
            {
                break;
            }

            if (away > ClearMetres)
            {
                double there = view.AlongMetres - (away * view.Slant), on = view.AlongMetres + (away * view.Slant);
                most *= away < before - ClearMetres ? screens[i].Passes(there - stretch, there + stretch, view.CosIncidence, losses) : 1;
                most *= away < after - ClearMetres ? screens[i].Passes(on - stretch, on + stretch, view.CosIncidence, losses) : 1;
            }
        }

        return most;
    }
}
