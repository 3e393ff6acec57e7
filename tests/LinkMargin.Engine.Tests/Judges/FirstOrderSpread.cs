using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Engine.Tests.Judges;

/// <summary>A margin's spread by its slopes at the tables' losses: right where spreads are small. The check on the draws.</summary>
internal static class FirstOrderSpread
{
    /// <summary>One standard deviation of a link's margin, dB.</summary>
    internal static double Db(StoredPaths stored, StoredLink link, RadioPair radios, UncertaintyBasis basis)
    {
        double[] gradient = new double[stored.Parameters.Count];
        link.PathLossDb(new double[gradient.Length], gradient);
        var shared = new SharedLosses(stored.Materials, basis);
        double[] rows = [.. shared.ByRow(gradient).Select((slope, row) => slope * shared.SpreadsDb[row])];
        double variance = (shared.Together is { } together ? [.. together.LeftMultiply(MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(rows))] : rows)
            .Sum(part => part * part);
        double[] ownSpreads = PlaceSpreads.Of(stored, basis);
        for (int p = 0; p < gradient.Length; p++)
        {
            if (stored.Parameters[p].Place is not null)
            {
                double own = gradient[p] * ownSpreads[stored.Parameters[p].Material];
                variance += own * own;
            }
        }

        double model = basis.Spreads.ModelDb, console = radios.Console.SpreadDb, controller = radios.Controller.SpreadDb;
        return Math.Sqrt(variance + (model * model) + (console * console) + (controller * controller));
    }
}
