using LinkMargin.Engine.Fitting;

namespace LinkMargin.Engine.Tests.Fitting;

/// <summary>
/// Links as a house has them: each with a few paths, a path with its length's loss and some crossings of each material; the
/// powers of the paths add up.
/// </summary>
internal sealed class SyntheticHouse : IPathLossModel
{
    private readonly double[] tableDb;
    private readonly (double LossDb, int[] Crossings)[][] links;

    public SyntheticHouse(Random random, double[] tableDb, int linkCount)
    {
        this.tableDb = tableDb;
        links = new (double, int[])[linkCount][];
        for (int i = 0; i < linkCount; i++)
        {
            DistancesMetres.Add(Math.Exp(random.NextDouble() * 2.7));
            double free = 40.2 + (20 * Math.Log10(DistancesMetres[i]));
            links[i] = new (double, int[])[1 + random.Next(3)];
            for (int p = 0; p < links[i].Length; p++)
            {
                int[] crossings = new int[tableDb.Length];
                for (int n = random.Next(4); n > 0; n--)
                {
                    crossings[random.Next(tableDb.Length)]++;
                }

                links[i][p] = (free + (p * (3 + (6 * random.NextDouble()))), crossings);
            }
        }
    }

    public int ParameterCount => tableDb.Length;

    public List<double> DistancesMetres { get; } = [];

    public double PathLossDb(int link, ReadOnlySpan<double> shiftsDb, Span<double> gradient)
    {
        double sum = 0;
        gradient.Clear();
        foreach ((double lossDb, int[] crossings) in links[link])
        {
            double loss = lossDb;
            for (int m = 0; m < tableDb.Length; m++)
            {
                loss += crossings[m] * (tableDb[m] + shiftsDb[m]);
            }

            double power = Math.Pow(10, -loss / 10);
            sum += power;
            for (int m = 0; m < tableDb.Length; m++)
            {
                gradient[m] += power * crossings[m];
            }
        }

        for (int m = 0; m < tableDb.Length; m++)
        {
            gradient[m] /= sum;
        }

        return -10 * Math.Log10(sum);
    }
}
