using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>
/// What diffracted paths of one link share. Two corners of a rack, or the jambs of two doorways in a row, may each stand within
/// reach of the leg past the other: then the paths round either are one path, with the other corner in its front. So are those
/// past the two jambs of one doorway, or the sides of one stair void. Such paths together bring as much as the strongest: each
/// brings its power P times P⁴/∑ s·P⁴, over all paths with the share s that they have in common. So nothing jumps where one edge
/// leaves the reach of the other's leg, or another path becomes the strongest.
/// </summary>
internal static class SharedEnergy
{
    // Paths that have this much in common are listed as one.
    private const double MostlyShared = 0.5;

    /// <summary>Reduces each path to what it brings; of those that are one, keeps the strongest with what all of them bring.</summary>
    /// <param name="edges">The house's edges.</param>
    /// <param name="paths">The paths of a link, strongest first.</param>
    /// <param name="console">Where they start.</param>
    /// <param name="hands">Where they end.</param>
    /// <param name="wavelengthMetres">λ.</param>
    /// <returns>How many are left.</returns>
    internal static int Divide(
        ReadOnlySpan<DiffractionEdge> edges, Span<DiffractedPath> paths, Point3 console, Point3 hands, double wavelengthMetres)
    {
        using Scratch scratch = Scratch.Open();
        Span<double> weights = scratch.Of<double>(paths.Length), sums = scratch.Of<double>(paths.Length);
        for (int i = 0; i < paths.Length; i++)
        {
            double ratio = paths[i].Power / paths[0].Power, squared = ratio * ratio;
            sums[i] = weights[i] = squared * squared;
            for (int j = 0; j < i; j++)
            {
                double shared = Shared(edges, paths[i], paths[j], console, hands, wavelengthMetres);
                sums[i] += shared * weights[j];
                sums[j] += shared * weights[i];
            }
        }

        int left = 0;
        for (int i = 0; i < paths.Length; i++)
        {
            DiffractedPath path = paths[i];
            path.Power *= sums[i] > 0 ? weights[i] / sums[i] : 0;
            int with = 0;
            while (with < left && Shared(edges, paths[with], path, console, hands, wavelengthMetres) < MostlyShared)
            {
                with++;
            }

            if (with < left)
            {
                paths[with].Power += path.Power;
            }
            else
            {
                paths[left++] = path;
            }
        }

        return left;
    }

    private static double Shared(
        ReadOnlySpan<DiffractionEdge> edges, in DiffractedPath one, in DiffractedPath other, Point3 console, Point3 hands, double wavelengthMetres)
    {
        if (one.HasTwoEdges != other.HasTwoEdges)
        {
            return 0; // they differ by a second edge, which is out of reach
        }

        if (edges[one.First].Group == edges[other.First].Group && edges[one.Last].Group == edges[other.Last].Group)
        {
            return 1;
        }

        return one.HasTwoEdges
            ? Alike(console, one.FirstPlace, other.FirstPlace, one.LastPlace, wavelengthMetres)
                * Alike(one.FirstPlace, one.LastPlace, other.LastPlace, hands, wavelengthMetres)
            : Alike(console, one.FirstPlace, other.FirstPlace, hands, wavelengthMetres);
    }

    // How far a path round one place is the same as that round another: the places are one behind the other, in either order.
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
