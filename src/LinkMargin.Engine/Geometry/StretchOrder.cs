namespace LinkMargin.Engine.Geometry;

/// <summary>Finds which of many stretches along one line reach into another.</summary>
internal readonly struct StretchOrder
{
    private readonly double[] starts;
    private readonly double[] farthest; // for each, how far it and all before it reach

    /// <summary>Takes stretches in the order in which they start; they may overlap.</summary>
    internal StretchOrder(IEnumerable<(double From, double To)> stretches)
    {
        starts = [.. stretches.Select(stretch => stretch.From)];
        farthest = [.. stretches.Select(stretch => stretch.To)];
        for (int i = 1; i < farthest.Length; i++)
        {
            farthest[i] = Math.Max(farthest[i], farthest[i - 1]);
        }
    }

    /// <summary>The number of the first that reaches beyond a place; how many there are where none does.</summary>
    internal int FirstBeyond(double place)
    {
        int low = 0, high = farthest.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = farthest[middle] > place ? (low, middle) : (middle + 1, high);
        }

        return low;
    }

    /// <summary>How many start before a place.</summary>
    internal int StartBefore(double place)
    {
        int low = 0, high = starts.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = starts[middle] < place ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
