using LinkMargin.Engine.Fitting;

namespace LinkMargin.Engine.Tests.Fitting;

/// <summary>Links of one path each: free of loss but for so many crossings of each material.</summary>
internal sealed class CountedCrossings(double[] lossDb, double[][] crossings) : IPathLossModel
{
    public int ParameterCount => lossDb.Length;

    public double PathLossDb(int link, ReadOnlySpan<double> shiftsDb, Span<double> gradient)
    {
        double loss = 0;
        for (int m = 0; m < lossDb.Length; m++)
        {
            gradient[m] = crossings[link][m];
            loss += crossings[link][m] * (lossDb[m] + shiftsDb[m]);
        }

        return loss;
    }
}
