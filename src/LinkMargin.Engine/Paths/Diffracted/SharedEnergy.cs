using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>
/// What diffracted paths of one link share. Two corners of a rack, or the jambs of two doorways in a row, may each stand within
/// reach of the leg past the other: then the paths round either are one path, with the other corner in its front. It counts once,
/// as the stronger of the two, and as two in so far as either edge leaves the reach of the other's leg.
/// </summary>
internal static class SharedEnergy
{
    /// <summary>Takes from each path what it shares with stronger ones.</summary>
    /// <param name="paths">The paths of a link, strongest first.</param>
    /// <param name="console">Where they start.</param>
    /// <param name="hands">Where they end.</param>
    /// <param name="wavelengthMetres">λ.</param>
    internal static void TakeOut(Span<DiffractedPath> paths, Point3 console, Point3 hands, double wavelengthMetres)
    {
        for (int weaker = paths.Length - 1; weaker > 0; weaker--)
        {
            ref DiffractedPath path = ref paths[weaker];
            foreach (ref readonly DiffractedPath stronger in paths[..weaker])
            {
                if (stronger.HasTwoEdges == path.HasTwoEdges)
                {
                    path.Power *= 1 - Shared(stronger, path, console, hands, wavelengthMetres);
                }
            }
        }
    }

    private static double Shared(in DiffractedPath one, in DiffractedPath other, Point3 console, Point3 hands, double wavelengthMetres) =>
        one.HasTwoEdges
            ? Alike(console, one.FirstPlace, other.FirstPlace, one.LastPlace, wavelengthMetres)
                * Alike(one.FirstPlace, one.LastPlace, other.LastPlace, hands, wavelengthMetres)
            : Alike(console, one.FirstPlace, other.FirstPlace, hands, wavelengthMetres);

    // How far a path round one place is that round another: they stand one behind the other, in either order.
    private static double Alike(Point3 from, Point3 one, Point3 other, Point3 to, double wavelengthMetres) =>
        Math.Max(InARow(from, one, other, to, wavelengthMetres), InARow(from, other, one, to, wavelengthMetres));

    private static double InARow(Point3 from, Point3 first, Point3 second, Point3 to, double wavelengthMetres)
    {
        double within = 1 - EdgeKernel.Apart(KnifeEdge.ParameterOfDetour(KnifeEdge.DetourMetres(from, first, second), true, wavelengthMetres));
        return within > 0
            ? within * (1 - EdgeKernel.Apart(KnifeEdge.ParameterOfDetour(KnifeEdge.DetourMetres(first, second, to), true, wavelengthMetres)))
            : 0;
    }
}
