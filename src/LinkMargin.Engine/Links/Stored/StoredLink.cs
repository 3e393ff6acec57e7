using System.Runtime.Intrinsics;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Links.Stored;

/// <summary>
/// The paths of one link, with how much more each loses for every decibel more in each of the house's losses, so that the link
/// can be evaluated with other losses without tracing again. Each path's loss is taken as linear in the shifts, with the
/// slope over one decibel at the table's values; the paths' powers then add up as always.
/// </summary>
public sealed class StoredLink
{
    private readonly double[] power; // of each path, at the table's values
    private readonly int[] first; // one longer: path k has the slopes first[k]..first[k+1]-1
    private readonly int[] parameter;
    private readonly double[] slope; // dB per dB

    internal StoredLink(double[] power, int[] first, int[] parameter, double[] slope)
    {
        this.power = power;
        this.first = first;
        this.parameter = parameter;
        this.slope = slope;
    }

    /// <summary>Path loss, dB.</summary>
    /// <param name="shiftsDb">How much more each of <see cref="StoredPaths.Parameters"/> loses than its table says, dB.</param>
    public double PathLossDb(ReadOnlySpan<double> shiftsDb)
    {
        double sum = 0;
        for (int k = 0; k < power.Length; k++)
        {
            sum += Shifted(k, shiftsDb);
        }

        return PathLoss.FromPowerRatio(sum);
    }

    /// <summary>The same with its slopes.</summary>
    /// <param name="shiftsDb">How much more each of <see cref="StoredPaths.Parameters"/> loses than its table says, dB.</param>
    /// <param name="gradient">Receives the derivative by each shift; all are written.</param>
    public double PathLossDb(ReadOnlySpan<double> shiftsDb, Span<double> gradient)
    {
        gradient.Clear();
        double sum = 0;
        for (int k = 0; k < power.Length; k++)
        {
            double shifted = Shifted(k, shiftsDb);
            sum += shifted;
            for (int i = first[k]; i < first[k + 1]; i++)
            {
                gradient[parameter[i]] += shifted * slope[i];
            }
        }

        for (int i = 0; i < gradient.Length; i++)
        {
            gradient[i] = sum > 0 ? gradient[i] / sum : 0;
        }

        return PathLoss.FromPowerRatio(sum);
    }

    /// <summary>Path losses in many houses at once, dB.</summary>
    /// <param name="shiftsDb">How much more a parameter loses in each house, dB.</param>
    /// <param name="lossesDb">Receives one loss for each house.</param>
    internal void PathLossesDb(Func<int, double[]> shiftsDb, Span<double> lossesDb)
    {
        int houses = lossesDb.Length;
        using Scratch scratch = Scratch.Open();
        Span<double> sums = scratch.Of<double>(houses), shifted = scratch.Of<double>(houses);
        sums.Clear();
        for (int path = 0; path < power.Length; path++)
        {
            shifted.Clear();
            for (int i = first[path]; i < first[path + 1]; i++)
            {
                AddTimes(shiftsDb(parameter[i]), slope[i], shifted);
            }

            AddPowers(power[path], shifted, sums);
        }

        for (int house = 0; house < houses; house++)
        {
            lossesDb[house] = PathLoss.FromPowerRatio(sums[house]);
        }
    }

    private static void AddTimes(ReadOnlySpan<double> shiftsDb, double slope, Span<double> lossDb)
    {
        int vectors = lossDb.Length - (lossDb.Length % Vector512<double>.Count);
        Vector512<double> times = Vector512.Create(slope);
        for (int d = 0; d < vectors; d += Vector512<double>.Count)
        {
            (Vector512.LoadUnsafe(ref lossDb[d]) + (times * Vector512.LoadUnsafe(in shiftsDb[d]))).StoreUnsafe(ref lossDb[d]);
        }

        for (int d = vectors; d < lossDb.Length; d++)
        {
            lossDb[d] += slope * shiftsDb[d];
        }
    }

    private static void AddPowers(double power, ReadOnlySpan<double> lossDb, Span<double> sums)
    {
        int vectors = lossDb.Length - (lossDb.Length % Vector512<double>.Count);
        Vector512<double> least = Vector512.Create(-PathLoss.GreatestDb), scale = Vector512.Create(-Math.Log(10) / 10), times = Vector512.Create(power);
        for (int d = 0; d < vectors; d += Vector512<double>.Count)
        {
            Vector512<double> left = Vector512.Exp(Vector512.Max(Vector512.LoadUnsafe(in lossDb[d]), least) * scale);
            (Vector512.LoadUnsafe(ref sums[d]) + (times * left)).StoreUnsafe(ref sums[d]);
        }

        for (int d = vectors; d < lossDb.Length; d++)
        {
            sums[d] += power * Math.Exp(Math.Max(lossDb[d], -PathLoss.GreatestDb) * (-Math.Log(10) / 10));
        }
    }

    private double Shifted(int path, ReadOnlySpan<double> shiftsDb)
    {
        double lossDb = 0;
        for (int i = first[path]; i < first[path + 1]; i++)
        {
            lossDb += slope[i] * shiftsDb[parameter[i]];
        }

        // A slope holds for small shifts only: no shift may gain more than a link can lose.
        return power[path] * Math.Exp(-Math.Max(lossDb, -PathLoss.GreatestDb) * (Math.Log(10) / 10));
    }
}
