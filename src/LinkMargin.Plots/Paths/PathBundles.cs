namespace LinkMargin.Plots.Paths;

/// <summary>
/// Finds paths that take the same way on the plan, such as the straight line and what the floor below it reflects, and
/// says how far aside each is drawn so that all can be seen.
/// </summary>
internal static class PathBundles
{
    // Two paths that run beside each other for less of the longer one's way part soon enough to be distinguished.
    private const double SamePathShare = 0.6;

    /// <summary>How far aside of its true line each track is drawn, in the unit of the gap; above 0 to the left.</summary>
    /// <param name="tracks">The tracks on their true lines, strongest first.</param>
    /// <param name="nearMetres">Tracks no farther apart than this run beside each other.</param>
    /// <param name="gap">From the middle of one to the middle of the next.</param>
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

            // The strongest stays in the middle; the others go to its left and right in turn.
            (PathTrack first, int count) = bundles[found];
            aside[i] = gap * ((count + 1) / 2) * (count % 2 == 1 ? 1 : -1);
            bundles[found] = (first, count + 1);
        }

        return aside;
    }

    private static bool IsSamePath(PathTrack one, PathTrack other, double nearMetres) =>
        Math.Min(one.ShareBeside(other, nearMetres), other.ShareBeside(one, nearMetres)) >= SamePathShare;
}
