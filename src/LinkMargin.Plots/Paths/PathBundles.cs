namespace LinkMargin.Plots.Paths;

/// <summary>
/// Finds paths that coincide on the plan, such as the direct path and a reflection from the floor below it, and
/// gives the offset at which each is drawn so that all are visible.
/// </summary>
internal static class PathBundles
{
    // Paths that run together over less than this share of the longer one separate soon enough to be distinguished.
    private const double SamePathShare = 0.6;

    /// <summary>The offset of each track from its true line, in the unit of the gap; above 0 to the left.</summary>
    /// <param name="tracks">The tracks on their true lines, strongest first.</param>
    /// <param name="nearMetres">Greatest distance between tracks that run together.</param>
    /// <param name="gap">Distance between the middles of neighbouring tracks.</param>
    public static double[] AsideOf(IReadOnlyList<PathTrack> tracks, double nearMetres, double gap)
    {
        double[] aside = new double[tracks.Count];
        var bundles = new List<(PathTrack First, int Count)>();
        for (int i = 0; i < tracks.Count; i++)
        {
            int found = bundles.FindIndex(bundle => IsSamePath(bundle.First, tracks[i], nearMetres));
            if (found < 0)
            {
                bundles.Add((tracks[i], 1));
                continue;
            }

            // The strongest stays in the middle; the others go left and right in turn.
            (PathTrack first, int count) = bundles[found];
            aside[i] = gap * ((count + 1) / 2) * (count % 2 == 1 ? 1 : -1);
            bundles[found] = (first, count + 1);
        }

        return aside;
    }

    private static bool IsSamePath(PathTrack one, PathTrack other, double nearMetres) =>
        Math.Min(one.ShareBeside(other, nearMetres), other.ShareBeside(one, nearMetres)) >= SamePathShare;
}
