using LinkMargin.Engine.Fitting;
using MathNet.Numerics.LinearAlgebra;

namespace LinkMargin.Engine.Tests.Fitting;

/// <summary>Thousands of devices: the same answers as with a full matrix, at a price that grows with the readings.</summary>
public sealed class FitManyDevicesTests
{
    private const int Links = 40;

    // A general library's dense solver is the judge.
    [Theory]
    [InlineData(3, 1, 10)]
    [InlineData(6, 9, 40)]
    [InlineData(0, 5, 12)]
    [InlineData(4, 30, 20)]
    public void Solution_and_inverse_are_those_of_the_full_matrix(int materials, int devices, int measurements)
    {
        Random random = new(materials + (100 * devices));
        int size = materials + devices;
        FitCurvature curvature = new(materials, devices);
        var full = Matrix<double>.Build.DenseIdentity(size);
        for (int i = 0; i < measurements; i++)
        {
            double[] slopes = [.. Enumerable.Range(0, materials).Select(_ => (random.NextDouble() * 4) - 2)];
            int device = random.Next(devices);
            double weight = random.NextDouble(), own = 1 + random.NextDouble();
            curvature.Add(weight, slopes, device, own);
            var row = Vector<double>.Build.Dense(size);
            for (int m = 0; m < materials; m++)
            {
                row[m] = slopes[m];
            }

            row[materials + device] = own;
            full += weight * row.OuterProduct(row);
        }

        double[] right = [.. Enumerable.Range(0, size).Select(_ => random.NextDouble())];
        bool[] held = [.. Enumerable.Range(0, size).Select(k => k < materials && k % 3 == 2)];
        int[] free = [.. Enumerable.Range(0, size).Where(k => !held[k])];
        const double Damping = 0.3;
        var damped = Matrix<double>.Build.Dense(free.Length, free.Length, (a, b) => full[free[a], free[b]] * (a == b ? 1 + Damping : 1));
        Vector<double> expected = damped.Solve(Vector<double>.Build.Dense(free.Length, a => right[free[a]]));
        double[] solved = curvature.Solve(right, held, Damping);
        Assert.All(free.Select((k, a) => (k, a)), p => Assert.Equal(expected[p.a], solved[p.k], 1e-10));

        FitCovariance covariance = curvature.Inverse();
        Matrix<double> inverse = full.Inverse();
        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j < size; j++)
            {
                Assert.Equal(inverse[i, j], covariance[i, j], 1e-10);
            }
        }
    }

    // A full matrix of the devices would take four times the memory for twice the devices, and eight times the work.
    [Fact]
    public void Twice_the_devices_take_about_twice_the_memory()
    {
        AllocatedFor(100);
        double ratio = (double)AllocatedFor(1200) / AllocatedFor(600);
        Assert.InRange(ratio, 1.5, 2.6);
    }

    private static long AllocatedFor(int devices)
    {
        Random random = new(5);
        FitProblem problem = new(
            new TwoWalls(),
            [new MaterialPrior("board", 3, 1), new MaterialPrior("brick", 7, 2)],
            [.. Enumerable.Range(0, devices).Select(d => new DevicePrior($"phone {d}", 0, 6))],
            [.. Enumerable.Range(0, devices).Select(d => new FitMeasurement(d % Links, d, -40 - (40 * random.NextDouble()), true, 5))],
            BadMeasurements.None);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Assert.True(LossFit.Of(problem).HasConverged);
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    private sealed class TwoWalls : IPathLossModel
    {
        public int ParameterCount => 2;

        public double PathLossDb(int link, ReadOnlySpan<double> shiftsDb, Span<double> gradient)
        {
            (gradient[0], gradient[1]) = (link % 3, link % 5);
            return 50 + link + (gradient[0] * (3 + shiftsDb[0])) + (gradient[1] * (7 + shiftsDb[1]));
        }
    }
}
