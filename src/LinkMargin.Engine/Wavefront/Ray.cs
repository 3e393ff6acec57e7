using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// A straight line that energy travels, or a path unfolded to a straight line at its mirror, with the width of its first
/// Fresnel zone all along. Beside it, v = √2·h/R1 measures the distance to the left of it on the plan.
/// </summary>
internal readonly struct Ray
{
    /// <summary>Closer to an end than this the zone has almost no width, metres.</summary>
    private const double EndMetres = 1e-4;

    /// <summary>A whole line, or the leg of it between two shares of its length, with the front of the usual reach or another.</summary>
    internal Ray(Point3 from, Point3 to, double wavelengthMetres, double start = 0, double end = 1, FrontReach? reach = null)
    {
        Reach = reach ?? FrontReach.Usual;
        From = from;
        To = to;
        LengthMetres = from.DistanceTo(to);
        double east = to.X - from.X, north = to.Y - from.Y;
        PlanMetres = Math.Sqrt((east * east) + (north * north));
        Start = start;
        End = end;
        (EastX, NorthY) = PlanMetres > 0
            ? (east / PlanMetres, north / PlanMetres)
            : (1, 0);
        ZoneSquareMetres = wavelengthMetres * LengthMetres;
        Least = EndMetres / Math.Max(LengthMetres, EndMetres * 4);
        Greatest = 1 - Least;
    }

    /// <summary>How far out its front reaches.</summary>
    internal FrontReach Reach { get; }

    /// <summary>Its start, as unfolded.</summary>
    internal Point3 From { get; }

    /// <summary>Its end, as unfolded.</summary>
    internal Point3 To { get; }

    /// <summary>Its whole length, metres.</summary>
    internal double LengthMetres { get; }

    /// <summary>Its whole length on the plan, metres.</summary>
    internal double PlanMetres { get; }

    /// <summary>Where the travelled part starts, share of the whole length.</summary>
    internal double Start { get; }

    /// <summary>Where the travelled part ends, share of the whole length.</summary>
    internal double End { get; }

    /// <summary>The least share of the whole length at which the zone's width counts.</summary>
    internal double Least { get; }

    /// <summary>The greatest share of the whole length at which it counts.</summary>
    internal double Greatest { get; }

    /// <summary>East component of its unit direction on the plan.</summary>
    internal double EastX { get; }

    /// <summary>North component of its unit direction on the plan.</summary>
    internal double NorthY { get; }

    /// <summary>Cosine of its slope.</summary>
    internal double CosSlope => PlanMetres / LengthMetres;

    /// <summary>Square of the first Fresnel radius over t(1 − t), at any share t of the length, square metres.</summary>
    internal double ZoneSquareMetres { get; }

    /// <summary>Widest half-width of the strip in which obstacles matter, metres.</summary>
    internal double ReachMetres => WidestReachMetres(ZoneSquareMetres, Reach);

    /// <summary>The same for any ray.</summary>
    /// <param name="zoneSquareMetres">Wavelength times its whole length, square metres.</param>
    /// <param name="reach">How far out its front reaches.</param>
    internal static double WidestReachMetres(double zoneSquareMetres, in FrontReach reach) =>
        reach.End / Math.Sqrt(2) * Math.Sqrt(zoneSquareMetres) / 2;

    /// <summary>The same with its end moved by a step on the plan.</summary>
    internal Ray Tilted(Point2 step) => new(From, (To.Plan + step).At(To.Z), ZoneSquareMetres / LengthMetres, Start, End, Reach);

    /// <summary>Whether something is nowhere within the front's reach.</summary>
    /// <param name="asideMetres">Its least distance from the line on the plan, metres.</param>
    /// <param name="one">Where it starts abreast of the line, share of the length.</param>
    /// <param name="other">Where it ends.</param>
    internal bool IsOutOfReach(double asideMetres, double one, double other)
    {
        double widest = Math.Clamp(0.5, Math.Min(one, other), Math.Max(one, other));
        double t = Math.Clamp(widest, Least, Greatest);
        double squared = Reach.End * Reach.End / 2 * ZoneSquareMetres * t * (1 - t);
        return asideMetres * asideMetres > squared;
    }

    /// <summary>
    /// Whether a share of the whole length lies in the travelled part. The place where two legs meet belongs to the first, so that
    /// an obstacle exactly there is met once; the ends of the whole line are in no leg.
    /// </summary>
    internal bool Holds(double t) => t > Start && (t < End || (t == End && End < 1));

    /// <summary>First Fresnel radius at a share of the length strictly between 0 and 1, metres.</summary>
    internal double RadiusAt(double t) => Math.Sqrt(ZoneSquareMetres * t * (1 - t));

    /// <summary>Height at a share of the length, metres.</summary>
    internal double HeightAt(double t) => From.Z + (t * (To.Z - From.Z));

    /// <summary>The point at a share of the length.</summary>
    internal Point3 PointAt(double t) => From.Towards(To, t);

    /// <summary>Share of the length abreast of a plan point.</summary>
    internal double Abreast(double x, double y) => (((x - From.X) * EastX) + ((y - From.Y) * NorthY)) / PlanMetres;

    /// <summary>Distance of a plan point to the left of the line, metres.</summary>
    internal double LeftOf(double x, double y) => (EastX * (y - From.Y)) - (NorthY * (x - From.X));
}
