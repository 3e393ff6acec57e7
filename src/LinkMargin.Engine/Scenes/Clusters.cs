namespace LinkMargin.Engine.Scenes;

/// <summary>
/// Things joined into clusters by pairs: whatever a chain of pairs connects is one cluster, whatever the order of the pairs.
/// </summary>
internal sealed class Clusters
{
    private readonly int[] parents;

    /// <summary>Starts with a number of things, each alone.</summary>
    internal Clusters(int count) => parents = [.. Enumerable.Range(0, count)];

    /// <summary>Joins the clusters of two things.</summary>
    internal void Join(int one, int other)
    {
        int a = RootOf(one), b = RootOf(other);
        parents[Math.Max(a, b)] = Math.Min(a, b);
    }

    /// <summary>The clusters by their first members, each with its members in order.</summary>
    internal int[][] All() => [.. Enumerable.Range(0, parents.Length).GroupBy(RootOf).Select(cluster => cluster.ToArray())];

    private int RootOf(int member)
    {
        while (parents[member] != member)
        {
            member = parents[member] = parents[parents[member]];
        }

        return member;
    }
}
