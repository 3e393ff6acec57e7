using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// Solves sparse, symmetric, positive definite equations. The unknowns are put in an order that keeps neighbours together (E. Cuthill
/// and J. McKee, 1969, reversed), and each row of the factor is kept only from its first neighbour on: rooms have few neighbours, so
/// thousands of them take no longer to factorise than to lay out.
/// </summary>
internal sealed class SparseCholesky
{
    private readonly int[] order; // the unknown at each place
    private readonly int[] first; // the first column kept of each row
    private readonly double[][] rows; // of the factor, from that column to the diagonal

    /// <summary>Factorises.</summary>
    /// <param name="diagonal">The diagonal.</param>
    /// <param name="neighbours">The other entries of each row, by column.</param>
    internal SparseCholesky(double[] diagonal, IReadOnlyList<IReadOnlyList<(int Column, double Value)>> neighbours)
    {
        int count = diagonal.Length;
        order = Order(neighbours);
        int[] placeOf = new int[count];
        for (int place = 0; place < count; place++)
        {
            placeOf[order[place]] = place;
        }

        first = new int[count];
        rows = new double[count][];
        for (int place = 0; place < count; place++)
        {
            IReadOnlyList<(int Column, double Value)> row = neighbours[order[place]];
            int from = place;
            foreach ((int column, _) in row)
            {
                from = Math.Min(from, placeOf[column]);
            }

            double[] kept = new double[place - from + 1];
            foreach ((int column, double value) in row)
            {
                if (placeOf[column] < place)
                {
                    kept[placeOf[column] - from] = value;
                }
            }

            kept[^1] = diagonal[order[place]];
            (first[place], rows[place]) = (from, kept);
            Eliminate(place);
        }
    }

    /// <summary>Solves for a right-hand side.</summary>
    /// <param name="right">One number for each unknown.</param>
    /// <param name="unknowns">Receives the solution.</param>
    internal void Solve(ReadOnlySpan<double> right, Span<double> unknowns)
    {
        int count = rows.Length;
        using Scratch scratch = Scratch.Open();
        Span<double> y = scratch.Of<double>(count);
        for (int i = 0; i < count; i++)
        {
            double[] row = rows[i];
            double sum = right[order[i]];
            for (int k = 0, column = first[i]; k < row.Length - 1; k++, column++)
            {
                sum -= row[k] * y[column];
            }

            y[i] = sum / row[^1];
        }

        for (int i = count - 1; i >= 0; i--)
        {
            double[] row = rows[i];
            double value = y[i] /= row[^1];
            for (int k = 0, column = first[i]; k < row.Length - 1; k++, column++)
            {
                y[column] -= row[k] * value;
            }

            unknowns[order[i]] = value;
        }
    }

    private void Eliminate(int i)
    {
        double[] row = rows[i];
        int from = first[i];
        for (int j = from; j < i; j++)
        {
            double[] other = rows[j];
            double sum = row[j - from];
            for (int k = Math.Max(from, first[j]); k < j; k++)
            {
                sum -= row[k - from] * other[k - first[j]];
            }

            row[j - from] = sum / other[^1];
        }

        double square = row[^1];
        for (int k = 0; k < row.Length - 1; k++)
        {
            square -= row[k] * row[k];
        }

        row[^1] = Math.Sqrt(square);
    }

    // Outwards from one unknown, those with few neighbours first; then reversed.
    private static int[] Order(IReadOnlyList<IReadOnlyList<(int Column, double Value)>> neighbours)
    {
        int count = neighbours.Count;
        var found = new List<int>(count);
        bool[] isFound = new bool[count];
        foreach (int start in Enumerable.Range(0, count).OrderBy(i => neighbours[i].Count))
        {
            if (isFound[start])
            {
                continue;
            }

            isFound[start] = true;
            found.Add(start);
            for (int next = found.Count - 1; next < found.Count; next++)
            {
                foreach (int other in neighbours[found[next]].Select(one => one.Column).Where(i => !isFound[i]).OrderBy(i => neighbours[i].Count))
                {
                    isFound[other] = true;
                    found.Add(other);
                }
            }
        }

        found.Reverse();
        return [.. found];
    }
}
