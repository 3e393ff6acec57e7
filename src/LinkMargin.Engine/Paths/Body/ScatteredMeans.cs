using System.Numerics;
using LinkMargin.Engine.Propagation;

namespace LinkMargin.Engine.Paths.Body;

/// <summary>
/// Local means of the plane wave that two infinite cylinders on one axis scatter, each alone, to hands at a distance from the axis: over
/// both polarisations, over <see cref="WindowMetres"/> to either side along the circle about the axis, and over a quarter of a wavelength
/// nearer and farther, one whole period of the standing wave in front of a body. Powers are shares of the incident wave's.
/// </summary>
internal sealed class ScatteredMeans
{
    /// <summary>How far to either side hands move during play, metres.</summary>
    internal const double WindowMetres = 0.06;

    // Steps in that to either side; the field of a body changes over a third of a wavelength or more.
    private const int StepsAside = 4;

    // Gauss-Legendre rule of four points.
    private static readonly (double At, double Weight)[] Nearer =
    [
        (-0.86113631159405258, 0.34785484513745386 / 2), (-0.33998104358485626, 0.65214515486254614 / 2),
        (0.33998104358485626, 0.65214515486254614 / 2), (0.86113631159405258, 0.34785484513745386 / 2),
    ];

    private readonly Means[] means; // by angle from right behind the body, 0 to 180 degrees

    internal ScatteredMeans(LossyCylinder torso, LossyCylinder head, double distanceMetres, double wavelengthMetres)
    {
        int steps = Steps(distanceMetres);
        var places = new Means[steps + 1];
        foreach ((double at, double weight) in Nearer)
        {
            double distance = distanceMetres + (at * wavelengthMetres / 4);
            ScatteredField ofTorso = torso.At(distance), ofHead = torso == head ? ofTorso : head.At(distance);
            for (int i = 0; i <= steps; i++)
            {
                places[i] += (weight / 2) * Means.At(ofTorso, ofHead, i * Math.PI / steps);
            }
        }

        means = new Means[steps + 1];
        for (int i = 0; i <= steps; i++)
        {
            for (int k = -StepsAside; k <= StepsAside; k++)
            {
                // The two sides are mirror images; the ends of the window weigh half.
                int place = Math.Abs(i + k) is var beside && beside > steps ? (2 * steps) - beside : beside;
                means[i] += (Math.Abs(k) == StepsAside ? 0.5 : 1) / (2 * StepsAside) * places[place];
            }
        }
    }

    /// <summary>How many steps there are from behind the body to in front of it.</summary>
    internal static int Steps(double distanceMetres) => (int)Math.Ceiling(Math.PI * distanceMetres * StepsAside / WindowMetres);

    /// <summary>
    /// Share of the power left where torso and head scatter only their shares of the front: the mean of |1 + tT + hH|². The shares t and h
    /// have a part in phase with the wave and, for each edge, a part whose phase the mean does not keep.
    /// </summary>
    internal double Share(int step, in FrontShares front)
    {
        Means here = means[step];
        return 1 + (2 * front.Torso * here.TorsoInStep) + (2 * front.Head * here.HeadInStep)
            + (((front.Torso * front.Torso) + front.Seat + front.Shoulders) * here.Torso)
            + (((front.Head * front.Head) + front.Shoulders + front.Crown) * here.Head)
            + (2 * ((front.Torso * front.Head) - front.Shoulders) * here.Mutual);
    }

    // Re⟨T·E*⟩, ⟨|T|²⟩, Re⟨H·E*⟩, ⟨|H|²⟩ and Re⟨T·H*⟩ of the fields scattered by torso and head and of the incident one.
    private readonly record struct Means(double TorsoInStep, double Torso, double HeadInStep, double Head, double Mutual)
    {
        internal static Means At(ScatteredField ofTorso, ScatteredField ofHead, double angle)
        {
            Span<Complex> torso = stackalloc Complex[ScatteredField.Components], head = stackalloc Complex[ScatteredField.Components];
            Span<double> incident = stackalloc double[ScatteredField.Components];
            ofTorso.Sum(angle, torso);
            ofHead.Sum(angle, head);
            ofTorso.Incident(angle, incident);
            Means sum = default;
            for (int i = 0; i < torso.Length; i++)
            {
                Complex t = torso[i], h = head[i];
                sum += new Means(
                    t.Real * incident[i],
                    (t.Real * t.Real) + (t.Imaginary * t.Imaginary),
                    h.Real * incident[i],
                    (h.Real * h.Real) + (h.Imaginary * h.Imaginary),
                    (t.Real * h.Real) + (t.Imaginary * h.Imaginary));
            }

            return sum;
        }

        public static Means operator +(Means a, Means b) => new(
            a.TorsoInStep + b.TorsoInStep, a.Torso + b.Torso, a.HeadInStep + b.HeadInStep, a.Head + b.Head, a.Mutual + b.Mutual);

        public static Means operator *(double share, Means a) => new(
            share * a.TorsoInStep, share * a.Torso, share * a.HeadInStep, share * a.Head, share * a.Mutual);
    }
}

/// <summary>Shares of an infinite cylinder's scattered wave that come from a person's torso and head.</summary>
/// <param name="Torso">Share of the torso, in phase with the wave.</param>
/// <param name="Head">The same for the head.</param>
/// <param name="Seat">Power of the edge at the torso's lower end, not in phase.</param>
/// <param name="Shoulders">The same for the edge between torso and head.</param>
/// <param name="Crown">The same for the head's upper end.</param>
internal readonly record struct FrontShares(double Torso, double Head, double Seat, double Shoulders, double Crown)
{
    /// <summary>An infinite torso.</summary>
    internal static FrontShares OnlyTorso { get; } = new(1, 0, 0, 0, 0);

    /// <summary>
    /// The shares for a wave of a slope. The wave scattered at a height z of the axis travels (z − s)²·cos³ α/2ρ farther than that from
    /// the height s = ρ·tan α above the hands, where it leaves as steeply as it came. So heights count as Fresnel parameter
    /// v = (z − s)·√(2cos³ α/λρ), and what is scattered above z is what passes over a knife edge there.
    /// </summary>
    /// <param name="slopeRadians">α, above 0 for a wave from above.</param>
    /// <param name="distanceMetres">ρ, from the hands to the axis, metres.</param>
    /// <param name="wavelengthMetres">λ, metres.</param>
    internal static FrontShares At(double slopeRadians, double distanceMetres, double wavelengthMetres)
    {
        (double sin, double cos) = Math.SinCos(slopeRadians);
        double level = distanceMetres * sin / cos, scale = cos * Math.Sqrt(2 * cos / (wavelengthMetres * distanceMetres));
        (double seat, double seatEdge) = Above((Body.SeatMetres - level) * scale);
        (double shoulders, double shouldersEdge) = Above((Body.ShouldersMetres - level) * scale);
        (double crown, double crownEdge) = Above((Body.CrownMetres - level) * scale);
        return new FrontShares(seat - shoulders, shoulders - crown, seatEdge, shouldersEdge, crownEdge);
    }

    // The field from above a knife edge at v, for a local mean: the part b in phase with the wave, and the power of the rest. In the
    // edge's shadow (v > 0) its mean power is a² = 10^(−J(v)/10); the field from below the edge, 1 minus this field, has mean power
    // 10^(−J(−v)/10). The two fix the part in phase: 1 − 2b + a² = 10^(−J(−v)/10).
    private static (double InStep, double OutOfStep) Above(double v)
    {
        double depth = Math.Abs(v), shadow = Math.Pow(10, -KnifeEdge.LossDb(depth) / 10), lit = Math.Pow(10, -KnifeEdge.LossDb(-depth) / 10);
        double beyond = (1 + shadow - lit) / 2;
        return (v > 0 ? beyond : 1 - beyond, Math.Max(0, shadow - (beyond * beyond)));
    }
}
