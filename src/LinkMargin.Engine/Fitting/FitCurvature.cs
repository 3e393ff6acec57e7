using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;

namespace LinkMargin.Engine.Fitting;

/// <summary>
/// The curvature of a fit's cost: a symmetric matrix over the materials, then the devices. A measurement is taken with one
/// device, so devices are coupled to materials but never to each other, and the block of devices is diagonal: it is eliminated
/// first (Schur complement), and thousands of devices cost no more than as many measurements.
/// </summary>
internal sealed class FitCurvature
{
    private readonly int materials;
    private readonly double[,] among;
    private readonly double[][] between;
    private readonly double[] devices;

    /// <summary>The identity: the priors alone.</summary>
    internal FitCurvature(int materials, int devices)
    {
        this.materials = materials;
        among = new double[materials, materials];
        for (int m = 0; m < materials; m++)
        {
            among[m, m] = 1;
        }

        between = [.. Enumerable.Range(0, devices).Select(_ => new double[materials])];
        this.devices = [.. Enumerable.Repeat(1.0, devices)];
    }

    /// <summary>Adds a measurement.</summary>
    /// <param name="weight">Its curvature, 1/dB², 0 or more.</param>
    /// <param name="slopes">Derivatives of its level by the materials, dB.</param>
    /// <param name="device">Its device.</param>
    /// <param name="deviceSlope">The derivative by the device, dB.</param>
    internal void Add(double weight, ReadOnlySpan<double> slopes, int device, double deviceSlope)
    {
        for (int k = 0; k < materials; k++)
        {
            double left = weight * slopes[k];
            between[device][k] += left * deviceSlope;
            for (int j = 0; left != 0 && j < materials; j++)
            {
                among[k, j] += left * slopes[j];
            }
        }

        devices[device] += weight * deviceSlope * deviceSlope;
    }

    /// <summary>Solves for the unknowns that are not held; held ones stay 0.</summary>
    /// <param name="right">The right-hand side.</param>
    /// <param name="held">Which unknowns are held; never a device.</param>
    /// <param name="damping">Increase of the diagonal, as a share of it.</param>
    internal double[] Solve(double[] right, bool[] held, double damping)
    {
        int[] free = [.. Enumerable.Range(0, materials).Where(k => !held[k])];
        double[] diagonal = [.. devices.Select(d => d * (1 + damping))];
        double[] solution = new double[right.Length];
        if (free.Length > 0)
        {
            Matrix<double> left = Complement(free, diagonal, damping);
            Vector<double> reduced = DenseVector.Create(free.Length, a =>
            {
                double sum = right[free[a]];
                for (int d = 0; d < diagonal.Length; d++)
                {
                    sum -= between[d][free[a]] * right[materials + d] / diagonal[d];
                }

                return sum;
            });
            Vector<double> found = left.Cholesky().Solve(reduced);
            for (int a = 0; a < free.Length; a++)
            {
                solution[free[a]] = found[a];
            }
        }

        for (int d = 0; d < diagonal.Length; d++)
        {
            double sum = right[materials + d];
            foreach (int k in free)
            {
                sum -= between[d][k] * solution[k];
            }

            solution[materials + d] = sum / diagonal[d];
        }

        return solution;
    }

    /// <summary>Its inverse.</summary>
    internal FitCovariance Inverse()
    {
        double[][] shares = [.. between.Select((row, d) => row.Select(b => -b / devices[d]).ToArray())];
        Matrix<double> inner = materials == 0
            ? DenseMatrix.Create(1, 1, 0)
            : Complement([.. Enumerable.Range(0, materials)], devices, 0).Cholesky().Solve(DenseMatrix.CreateIdentity(materials));
        return new FitCovariance(materials, inner, shares, [.. devices.Select(d => 1 / d)]);
    }

    private DenseMatrix Complement(int[] free, double[] diagonal, double damping)
    {
        var left = DenseMatrix.Create(free.Length, free.Length, (a, b) => among[free[a], free[b]] * (a == b ? 1 + damping : 1));
        for (int d = 0; d < diagonal.Length; d++)
        {
            double[] row = between[d];
            for (int a = 0; a < free.Length; a++)
            {
                double share = row[free[a]] / diagonal[d];
                for (int b = 0; share != 0 && b < free.Length; b++)
                {
                    left[a, b] -= share * row[free[b]];
                }
            }
        }

        return left;
    }
}

/// <summary>The covariance of a fit's unknowns, materials first, then devices, each element computed on request.</summary>
/// <param name="materials">How many are materials.</param>
/// <param name="inner">The block of the materials.</param>
/// <param name="shares">For each device, how it changes with each material.</param>
/// <param name="own">Variance of each device if the materials were known.</param>
internal sealed class FitCovariance(int materials, Matrix<double> inner, double[][] shares, double[] own)
{
    // Each device's covariances with the materials.
    private readonly double[][] outer =
    [
        .. shares.Select(share => Enumerable.Range(0, materials).Select(m =>
        {
            double sum = 0;
            for (int k = 0; k < materials; k++)
            {
                sum += share[k] * inner[k, m];
            }

            return sum;
        }).ToArray()),
    ];

    /// <summary>One element.</summary>
    internal double this[int first, int second]
    {
        get
        {
            (int low, int high) = (Math.Min(first, second), Math.Max(first, second));
            if (high < materials)
            {
                return inner[low, high];
            }

            if (low < materials)
            {
                return outer[high - materials][low];
            }

            double sum = low == high ? own[low - materials] : 0;
            for (int m = 0; m < materials; m++)
            {
                sum += outer[low - materials][m] * shares[high - materials][m];
            }

            return sum;
        }
    }
}
