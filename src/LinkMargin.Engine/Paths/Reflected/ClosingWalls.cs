using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Paths.Body;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Reflected;

/// <summary>
/// Upper bound of a reflection's power, so that a hopeless one is dropped before its wavefront is collected. Where the walls of a plane
/// that a leg crosses close off the whole front, the path keeps no more than what the panel with the least loss passes at its angle: no
/// mean is above what that strip alone would give. So what is dropped here would not have counted anyway.
/// </summary>
internal sealed class ClosingWalls
{
    // Rounding of a product that is compared with one computed in another order.
    private const double Rounding = 1 + 1e-9;

    // Closer to a wall than this the rules of touching decide, metres.
    private const double ClearMetres = 1e-4;

    // Normals that differ by less than this point the same way.
    private const double SameDirection = 1e-9;

    // A leg that is closer than this to the direction of a wall has a front that is too long there to be closed off.
    private const double LeastSine = 0.05;

    private readonly TracedHouse house;
    private readonly int[][] materials; // of each mirror
    private readonly int[] directions; // of each mirror, by number
    private readonly UprightMirror[] first; // one of each direction
    private readonly (double Low, double High, WallScreen[][] ByDirection)[] storeys;

    internal ClosingWalls(TracedHouse house)
    {
        this.house = house;
        Scene scene = house.Scene;
        materials = [.. scene.Uprights.Select(mirror => mirror.Panels
            .SelectMany(panel => panel.Openings.Select(opening => opening.Filling).Append(panel.Material))
            .Where(material => material >= 0)
            .Distinct()
            .ToArray())];
        var each = new List<UprightMirror>();
        directions = new int[scene.Uprights.Length];
        foreach (UprightMirror mirror in scene.Uprights)
        {
            int direction = each.FindIndex(other => IsAlong(other, mirror));
            directions[mirror.Number] = direction < 0 ? each.Count : direction;
            if (direction < 0)
            {
                each.Add(mirror);
            }
        }

        first = [.. each];
        ILookup<int, UprightMirror> walls = scene.Uprights.Where(mirror => !mirror.IsFixture).ToLookup(mirror => directions[mirror.Number]);
        storeys = [.. scene.Storeys.Select(storey => (storey.Low + VerticalExtent.SameMetres, storey.High - VerticalExtent.SameMetres, first
            .Select((_, i) => walls[i]
                .Select(mirror => new WallScreen(mirror, storey))
                .Where(screen => !screen.IsEmpty)
                .OrderBy(screen => screen.Offset)
                .ToArray())
            .ToArray()))];
    }

    /// <summary>Whether a reflection cannot bring more than the least power that counts.</summary>
    internal bool IsHopeless(UprightMirror mirror, in MirrorView view, in LinkEnds ends, double leastPower, in FrontReach reach)
    {
        double free = house.FreeSpaceRatio(view.LengthMetres) * BodyShadow.MostFactor;
        return free <= leastPower || free * Most(mirror, view, ends, leastPower / free, reach) <= leastPower;
    }

    /// <summary>The most of a reflection's power that can arrive, apart from free space and the player's body.</summary>
    /// <param name="mirror">The mirror.</param>
    /// <param name="view">How the path strikes it.</param>
    /// <param name="ends">The link.</param>
    /// <param name="least">A share below which the exact value does not matter.</param>
    /// <param name="reach">How far out the path's front reaches.</param>
    internal double Most(UprightMirror mirror, in MirrorView view, in LinkEnds ends, double least, in FrontReach reach)
    {
        double most = Rounding * Reflected(mirror, view.CosIncidence);
        double low = Math.Min(ends.Start.Z, ends.End.Z), high = Math.Max(ends.Start.Z, ends.End.Z);
        foreach ((double bottom, double top, WallScreen[][] byDirection) in storeys)
        {
            if (low < bottom || high > top)
            {
                continue;
            }

            // Walls that are parallel to the mirror are crossed most often: by both legs.
            var path = new Folded(mirror, view, ends, Ray.WidestReachMetres(house.WavelengthMetres * view.LengthMetres, reach));
            int parallel = directions[mirror.Number];
            most *= Past(byDirection[parallel], first[parallel], path, least / most);
            for (int i = 0; i < first.Length && most > least; i++)
            {
                most *= i == parallel ? 1 : Past(byDirection[i], first[i], path, least / most);
            }

            return most;
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
            most = Math.Max(most, house.Losses[material].Reflectance(cosine));
        }

        return most;
    }

    // Share of power that the walls of one direction leave.
    private double Past(WallScreen[] screens, UprightMirror direction, in Folded path, double least)
    {
        if (screens.Length == 0)
        {
            return 1;
        }

        double most = Past(screens, direction, path, new Leg(path.Start, path.Place, 0, path.Share), least);
        return most > least ? most * Past(screens, direction, path, new Leg(path.Place, path.End, path.Share, 1), least / most) : most;
    }

    // The same of one leg.
    private double Past(WallScreen[] screens, UprightMirror direction, in Folded path, in Leg leg, double least)
    {
        double start = direction.Across(leg.From.X, leg.From.Y), end = direction.Across(leg.To.X, leg.To.Y);
        double from = Math.Min(start, end) + ClearMetres, to = Math.Max(start, end) - ClearMetres, most = 1;
        double sine = path.PlanMetres > 0 ? Math.Abs(end - start) / ((leg.End - leg.Start) * path.PlanMetres) : 0;
        if (!(sine > LeastSine))
        {
            return 1;
        }

        double alongStart = direction.Along(leg.From.X, leg.From.Y), alongStep = direction.Along(leg.To.X, leg.To.Y) - alongStart;
        for (int i = WallScreen.FirstFrom(screens, from); i < screens.Length && screens[i].Offset < to && most > least; i++)
        {
            double part = (screens[i].Offset - start) / (end - start), along = alongStart + (part * alongStep);
            double half = path.HalfOfFront(leg.Start + (part * (leg.End - leg.Start)), sine) + ClearMetres;
            if (path.IsBeforeMirror(leg.From + (part * (leg.To - leg.From)), direction, half))
            {
                most *= screens[i].Passes(along - half, along + half, sine * path.CosSlope, house.Losses);
            }
        }

        return most;
    }

    // One leg on the plan, and the shares of the whole path at which it starts and ends.
    private readonly record struct Leg(Point2 From, Point2 To, double Start, double End);

    // A path on the plan, with its mirror.
    private readonly struct Folded(UprightMirror mirror, in MirrorView view, in LinkEnds ends, double widestMetres)
    {
        private readonly int side = view.Before > 0 ? 1 : -1;

        internal Point2 Start { get; } = ends.Start.Plan;

        internal Point2 End { get; } = ends.End.Plan;

        internal Point2 Place { get; } = new(
            (mirror.NormalX * mirror.Offset) - (mirror.NormalY * view.AlongMetres), (mirror.NormalY * mirror.Offset) + (mirror.NormalX * view.AlongMetres));

        internal double Share { get; } = view.Share;

        internal double PlanMetres { get; } = view.PlanMetres;

        internal double CosSlope { get; } = view.PlanMetres / view.LengthMetres;

        // How far the front extends along a plane to either side of the path, metres, at most.
        internal double HalfOfFront(double share, double sine)
        {
            // Along a slanted plane the front widens towards the middle of the path.
            double slant = widestMetres / sine * Math.Sqrt(Math.Max(0, 1 - (sine * sine))) / PlanMetres;
            double widest = Math.Clamp(0.5, Math.Max(0, share - slant), Math.Min(1, share + slant));
            return 2 * Math.Sqrt(widest * (1 - widest)) * widestMetres / sine;
        }

        // Whether a stretch of a plane is wholly in front of the mirror: behind it, what counts is the image of the stretch.
        internal bool IsBeforeMirror(Point2 middle, UprightMirror plane, double half)
        {
            double across = (mirror.NormalY * plane.NormalX) - (mirror.NormalX * plane.NormalY);
            return (side * mirror.Before(middle.X, middle.Y)) - (Math.Abs(across) * half) > ClearMetres;
        }
    }
}
