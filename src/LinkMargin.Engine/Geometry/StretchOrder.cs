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

    /// <summary>Of things that belong to the stretches, those whose stretches reach into another, and perhaps some between them that do not.</summary>
    internal ReadOnlySpan<T> Within<T>(ReadOnlySpan<T> each, double from, double to)
    {
        int first = FirstBeyond(from), low = first, high = each.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = starts[middle] < to ? (middle + 1, high) : (low, middle);
        }

        return each[first..low];
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
}
