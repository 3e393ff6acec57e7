namespace LinkMargin.Engine.Scenes;

/// <summary>
/// Things put together because some pairs of them are one. Which end up together depends on the pairs alone, not on the order the
/// pairs come in: whatever a chain of pairs connects is one cluster.
/// </summary>
internal sealed class Clusters
{
    private readonly int[] parents;

    /// <summary>So many things, each alone.</summary>
    internal Clusters(int count) => parents = [.. Enumerable.Range(0, count)];

    /// <summary>Puts two things, and all that is together with either, together.</summary>
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
