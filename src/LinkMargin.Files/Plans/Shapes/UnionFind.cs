namespace LinkMargin.Files.Plans.Shapes;

/// <summary>Sets of numbers that grow together (disjoint sets with path halving).</summary>
internal sealed class UnionFind(int count)
{
    private readonly int[] parent = [.. Enumerable.Range(0, count)];

    /// <summary>The least number of the set this one is in.</summary>
    internal int Find(int i)
    {
        while (parent[i] != i)
        {
            i = parent[i] = parent[parent[i]];
        }

        return i;
    }

    /// <summary>Puts two sets together.</summary>
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
