using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Paths.Direct;
using LinkMargin.Engine.Paths.Reflected;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>
/// What bends round edges beyond the usual reach of a link's fronts, where next to nothing arrives by other paths: the fronts of the straight line
/// and of each reflection are summed to the far reach as well (<see cref="FrontReach"/>). What they bring more is a path of its own.
/// </summary>
internal sealed class FarFronts(TracedHouse house, ClosingWalls walls)
{
    private readonly ReflectedPower reflected = new(house);

    /// <summary>What they bring more.</summary>
    /// <param name="ends">The link.</param>
    /// <param name="leastPower">Power at or below which a front does not count.</param>
    /// <param name="round">The paths round edges.</param>
    /// <param name="buffer">The thread's own, with what the kinds that always count bring and the surfaces along the line.</param>
    /// <param name="gradients">Receives the slopes; null where they are not wanted.</param>
    /// <param name="whole">What all bring more, for slopes.</param>
    internal FarPower Of(
        in LinkEnds ends, double leastPower, in RoundEdges round, TraceBuffer buffer, LossGradients? gradients = null, double whole = 1)
    {
        double sure = buffer.AlwaysPower + round.Bare, share = Share(sure, ends.DistanceMetres);
        if (share == 0)
        {
            return default;
        }

        var counted = new Counting(leastPower, buffer, gradients, whole);
        counted.Add(share * round.Beside(Straight(ends, buffer)), ends.BodyFactor(house.Body, ends.End, ends.Start));
        foreach (UprightMirror mirror in house.Scene.Uprights)
        {
            if (MirrorView.TryOf(mirror, ends.Start, ends.End, out MirrorView view) && Share(sure, view.LengthMetres) is double part and > 0)
            {
                (double more, double body) = Upright(mirror, view, ends, leastPower, buffer);
                counted.Add(part * more, body);
            }
        }

        for (int plate = 0; plate < house.Scene.Plates.Count; plate++)
        {
            (double more, double body) = Level(plate, sure, ends, buffer);
            counted.Add(more, body);
        }

        return counted.Sum;
    }

    private double Share(double sure, double lengthMetres) => FrontReach.FarShare(sure, house.FreeSpaceRatio(lengthMetres));

    // What the far front of the straight line brings more, without the body.
    private double Straight(in LinkEnds ends, TraceBuffer buffer)
    {
        double clear = house.FreeSpaceRatio(ends.DistanceMetres);
        foreach (ref readonly SurfaceAlong surface in buffer.Surfaces)
        {
            clear *= surface.Factor;
        }

        DirectPaths.Gather(house, ends, FrontReach.Usual, buffer);
        double usual = FrontSum.PowerRatio(buffer.Pieces, house.Losses);
        DirectPaths.Gather(house, ends, FrontReach.Far, buffer);
        return clear * (FrontSum.PowerRatio(buffer.Pieces, house.Losses, FrontReach.Far) - usual);
    }

    // The same of a reflection, and what the body leaves of it.
    private (double More, double Body) Upright(UprightMirror mirror, in MirrorView view, in LinkEnds ends, double leastPower, TraceBuffer buffer)
    {
        if (walls.IsHopeless(mirror, view, ends, leastPower, FrontReach.Far))
        {
            return default;
        }

        double usual = Mirror.InUpright(mirror, view, ends, house, FrontReach.Usual, buffer, out Reflection reflection)
            ? reflected.Of(reflection, ends, buffer, 0, FrontReach.Usual)
            : 0;
        return Mirror.InUpright(mirror, view, ends, house, FrontReach.Far, buffer, out reflection)
            ? More(mirror.Number, usual, reflection, ends, buffer)
            : default;
    }

    private (double More, double Body) Level(int plate, double sure, in LinkEnds ends, TraceBuffer buffer)
    {
        LevelMirror mirror = house.Scene.Plates[plate];
        if (!Mirror.InLevel(mirror, ends, house, FrontReach.Usual, out Reflection reflection)
            || !(Share(sure, reflection.LengthMetres) is double share and > 0))
        {
            return default;
        }

        double usual = reflected.Of(reflection, ends, buffer, 0, FrontReach.Usual);
        (double more, double body) = Mirror.InLevel(mirror, ends, house, FrontReach.Far, out reflection)
            ? More(SurfaceAlong.OfPlate(plate), usual, reflection, ends, buffer)
            : default;
        return (share * more, body);
    }

    private (double More, double Body) More(int mirror, double usual, in Reflection reflection, in LinkEnds ends, TraceBuffer buffer)
    {
        double body = ReflectedPower.BodyFactor(house, reflection, ends);
        return (buffer.FactorOf(mirror) * (reflected.Of(reflection, ends, buffer, 0, FrontReach.Far) - usual) / body, body);
    }

    // Adds up what counts. The buffer holds the pieces of the far front.
    private struct Counting(double leastPower, TraceBuffer buffer, LossGradients? gradients, double whole)
    {
        internal FarPower Sum { get; private set; }

        internal void Add(double bare, double body)
        {
            if (bare > 0 && PathFinder.Counted(bare * body, leastPower) is double power and > 0)
            {
                Sum = new FarPower(Sum.Power + power, Sum.Bare + (power / body));
                gradients?.AddFront(buffer.Pieces, FrontReach.Far, power / whole);
            }
        }
    }
}

/// <summary>What far fronts bring more than usual ones, share of the transmitted power.</summary>
/// <param name="Power">With the player's own body.</param>
/// <param name="Bare">Without it.</param>
internal readonly record struct FarPower(double Power, double Bare);

/// <summary>What the paths round edges bring without the player's own body, share of the transmitted power.</summary>
/// <param name="Bare">All of them.</param>
/// <param name="InReach">That round edges which the far front of the straight line reaches.</param>
internal readonly record struct RoundEdges(double Bare, double InReach)
{
    /// <summary>The same with another path.</summary>
    internal RoundEdges With(in DiffractedPath path, Point3 console, Point3 hands, double wavelengthMetres)
    {
        double bare = path.Power / path.Body;
        double detour = Math.Max(KnifeEdge.DetourMetres(console, path.FirstPlace, hands), KnifeEdge.DetourMetres(console, path.LastPlace, hands));
        double apart = FrontReach.Far.Apart(KnifeEdge.ParameterOfDetour(detour, true, wavelengthMetres));
        return new RoundEdges(Bare + bare, InReach + ((1 - apart) * bare));
    }

    /// <summary>
    /// What the far front of the straight line adds to them. The same edges send their waves in it: both together bring the fourth root of the sum of
    /// their fourth powers, hardly more than the stronger of them.
    /// </summary>
    internal double Beside(double far)
    {
        double most = Math.Max(far, InReach), ratio = Math.Min(far, InReach) / most, squared = ratio * ratio;
        return far > 0 ? (most * Math.Sqrt(Math.Sqrt(1 + (squared * squared)))) - InReach : 0;
    }
}
