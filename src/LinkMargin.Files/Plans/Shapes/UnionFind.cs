namespace LinkMargin.Files.Plans.Shapes;

/// <summary>Disjoint sets of numbers that can be merged (union-find with path halving).</summary>
internal sealed class UnionFind(int count)
{
    private readonly int[] parent = [.. Enumerable.Range(0, count)];

    /// <summary>The smallest number in the set of this one.</summary>
    internal int Find(int i)
    {
        while (parent[i] != i)
        {
            i = parent[i] = parent[parent[i]];
        }

        return i;
    }

    /// <summary>Merges two sets.</summary>
    internal void Join(int a, int b)
    {
        (int low, int high) = (Find(a), Find(b));
        if (low > high)
        {
            (low, high) = (high, low);
        }

        parent[high] = low;
    }
}
