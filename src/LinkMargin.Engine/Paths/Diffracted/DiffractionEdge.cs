using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>A place where a path may be diffracted: beside an upright edge, or at the rim of a hole in a floor.</summary>
/// <param name="Plan">Where on the plan: a few centimetres clear of the edge.</param>
/// <param name="Low">The least height at which a path passes it, above the lowest floor, metres.</param>
/// <param name="High">The greatest.</param>
/// <param name="LowLevel">The lowest level it is open to.</param>
/// <param name="HighLevel">The highest.</param>
/// <param name="Group">Edges of one doorway or hole share a number: their paths carry the same energy.</param>
/// <param name="Kind">What kind of thing it goes round or through.</param>
/// <param name="Name">Which one.</param>
internal sealed record DiffractionEdge(
    Point2 Plan, double Low, double High, int LowLevel, int HighLevel, int Group, TurnKind Kind, string Name)
{
    /// <summary>The two jambs of a doorway, the near one first; null where nothing stands opposite.</summary>
    internal (Point2 Near, Point2 Far)? Jambs { get; init; }

    /// <summary>Whether it is open to a level.</summary>
    internal bool IsOpenTo(int level) => level >= LowLevel && level <= HighLevel;

    /// <summary>Where a path that would pass at a height is diffracted.</summary>
    internal Point3 At(double height) => Plan.At(Math.Clamp(height, Low, High));

    /// <summary>The turn of a path here, at a distance from the console along the path.</summary>
    internal PathTurn TurnAt(double distanceMetres) => new(Kind, Name, LowLevel, distanceMetres);

    /// <summary>
    /// What the width of a doorway leaves of the near jamb's power, 0 to 1. The waves of both jambs reach into its shadow and cancel as it narrows: power of
    /// both, with the amplitudes of their shadows and what a mean keeps of their product (<see cref="StripSum"/>). What the far one adds is a path of its own.
    /// </summary>
    /// <param name="from">Where the path comes from.</param>
    /// <param name="heightMetres">Where it passes.</param>
    /// <param name="to">Where it goes.</param>
    /// <param name="wavelengthMetres">λ.</param>
    internal double WidthFactor(Point3 from, double heightMetres, Point3 to, double wavelengthMetres)
    {
        if (Jambs is not (Point2 near, Point2 far))
        {
            return 1;
        }

        double v1 = Parameter(near), v2 = Parameter(far);
        double ratio = EdgeKernel.Edge(v2) / EdgeKernel.Edge(v1), phase = Math.PI / 2 * ((v2 * v2) - (v1 * v1));
        return Math.Min(1, 1 + (ratio * ratio) - (2 * ratio * Math.Exp(-phase * phase / 2)));

        double Parameter(Point2 jamb) =>
            KnifeEdge.ParameterOfDetour(KnifeEdge.DetourMetres(from, jamb.At(heightMetres), to), true, wavelengthMetres);
    }
}
