namespace LinkMargin.Engine.Runs;

/// <summary>
/// How thick a bundle of round cables is: the smallest circle that holds them all. Exact for up to three; found numerically for more, to
/// about one part in a hundred; a bound for more than <see cref="MostPacked"/>.
/// </summary>
public static class Bundle
{
    /// <summary>Most cables that are packed one by one.</summary>
    public const int MostPacked = 16;

    // Loosely packed: the bound for many cables, and where the search starts.
    private const double Loose = 1.2;

    private const int Starts = 12;
    private const int Sweeps = 400;
    private const int Halvings = 12;

    // Two circles may overlap by this share of the container's radius.
    private const double Overlap = 1e-4;

    /// <summary>Diameter of the bundle, in the unit of the cables' diameters; 0 for none.</summary>
    /// <param name="diameters">Each above 0.</param>
    public static double Diameter(IReadOnlyCollection<double> diameters)
    {
        double[] d = [.. diameters.OrderDescending()];
        return d.Length switch
        {
            0 => 0,
            1 => d[0],
            2 => d[0] + d[1],
            3 => OfThree(d[0], d[1], d[2]),
            > MostPacked => Math.Max(Loose * RootOfSquares(d), Diameter(d[..MostPacked])),
            _ => Packed(d, Diameter(d[..^1])),
        };
    }

    // The third beside the first two if there is room, otherwise the outer circle of Descartes' theorem.
    private static double OfThree(double first, double second, double third)
    {
        (double a, double b, double c) = (2 / first, 2 / second, 2 / third); // curvatures
        double beside = a + b - (2 / (first + second));
        return c >= beside ? first + second : 2 / Math.Abs(a + b + c - (2 * Math.Sqrt((a * b) + (b * c) + (c * a))));
    }

    private static double RootOfSquares(double[] diameters) => Math.Sqrt(diameters.Sum(d => d * d));

    // Never smaller than the bundle without the thinnest cable.
    private static double Packed(double[] diameters, double without)
    {
        double low = Math.Max(RootOfSquares(diameters), without), high = Math.Max(low, Loose * RootOfSquares(diameters));
        while (!Fits(diameters, high))
        {
            high *= 1.1;
        }

        for (int i = 0; i < Halvings; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Fits(diameters, middle) ? (low, middle) : (middle, high);
        }

        return high;
    }

    // From several starts, always the same ones: circles that overlap push each other apart, and the container pushes them in.
    private static bool Fits(double[] diameters, double container)
    {
        int count = diameters.Length;
        double[] x = new double[count], y = new double[count];
        double radius = container / 2, allowed = Overlap * radius;
        for (int start = 0; start < Starts; start++)
        {
            for (int i = 0; i < count; i++)
            {
                // A sunflower pattern, turned differently for each start.
                double away = radius * Math.Sqrt((i + 0.5) / count) * 0.8, turn = (i * (2.399963 + (0.13 * start))) + start;
                (x[i], y[i]) = (away * Math.Cos(turn), away * Math.Sin(turn));
            }

            for (int sweep = 0; sweep < Sweeps; sweep++)
            {
                if (Push(diameters, radius, x, y) <= allowed)
                {
                    return true;
                }
            }
        }

        return false;
    }

    // One sweep; returns the greatest overlap found.
    private static double Push(double[] diameters, double radius, double[] x, double[] y)
    {
        double most = 0;
        for (int i = 0; i < x.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                double dx = x[i] - x[j], dy = y[i] - y[j], touching = (diameters[i] + diameters[j]) / 2, squared = (dx * dx) + (dy * dy);
                if (squared < touching * touching)
                {
                    double apart = Math.Sqrt(squared), over = touching - apart;
                    most = Math.Max(most, over);
                    (dx, dy) = apart > 0 ? (dx / apart, dy / apart) : (1, 0);
                    (x[i], y[i]) = (x[i] + (over / 2 * dx), y[i] + (over / 2 * dy));
                    (x[j], y[j]) = (x[j] - (over / 2 * dx), y[j] - (over / 2 * dy));
                }
            }

            double away = Math.Sqrt((x[i] * x[i]) + (y[i] * y[i])), beyond = away + (diameters[i] / 2) - radius;
            if (beyond > 0)
            {
                most = Math.Max(most, beyond);
                double share = Math.Max(0, away - beyond) / away;
                (x[i], y[i]) = (share * x[i], share * y[i]);
            }
        }

        return most;
    }
}
