using LinkMargin.Engine.Paths.Diffuse;

namespace LinkMargin.Engine.Tests.Plain;

/// <summary>The exchange of power between facets, facet by facet: what leaves them, and what that strikes next.</summary>
internal static class PlainExchange
{
    /// <summary>What leaves each facet of what strikes it and its other face, W.</summary>
    internal static double[] Sent(SurfaceExchange exchange, IReadOnlyList<double> strikes, bool withReflection)
    {
        var sent = new double[exchange.Count];
        for (int i = 0; i < sent.Length; i++)
        {
            sent[i] = (withReflection ? exchange.ReflectedShares[i] * strikes[i] : 0) + (exchange.PassedShares[i] * strikes[exchange.OtherFaces[i]]);
        }

        return sent;
    }

    /// <summary>What power that leaves the facets strikes next, W: by the form factors of their patches, and on a patch by area.</summary>
    internal static double[] Struck(SurfaceExchange exchange, double[] sent)
    {
        var strikes = new double[exchange.Count];
        for (int cell = 0; cell < exchange.CellCount; cell++)
        {
            FormFactors factors = exchange.Layout.Factors[cell];
            int things = exchange.Things(cell), first = exchange.Layout.FirstOf(cell);
            double whole = exchange.SquareMetresOf(cell);
            for (int from = exchange.FirstOf(cell); from < exchange.FirstOf(cell + 1); from++)
            {
                int patch = exchange.Layout.OfNode[from] - first;
                strikes[things] += sent[from] * exchange.Areas[things] / whole;
                for (int to = exchange.FirstOf(cell); to < exchange.FirstOf(cell + 1); to++)
                {
                    int other = exchange.Layout.OfNode[to] - first;
                    double share = factors.Of(patch)[other] / factors.Areas[patch] * exchange.Areas[to] / factors.Areas[other];
                    strikes[to] += sent[from] * exchange.FreeShare(cell) * share;
                }
            }

            for (int to = exchange.FirstOf(cell); to < exchange.FirstOf(cell + 1); to++)
            {
                strikes[to] += sent[things] * exchange.Areas[to] / whole;
            }

            strikes[things] += sent[things] * exchange.Areas[things] / whole;
        }

        return strikes;
    }
}
