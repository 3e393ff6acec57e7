using LinkMargin.Engine.Houses;
using MathNet.Numerics.Integration;

namespace LinkMargin.Engine.Materials;

/// <summary>
/// Examples that stand for all walls built to one drawing: each layer's thickness is uniform over its stated tolerance,
/// independently, and sampled by a Gauss-Legendre rule whose order follows the change of phase over the tolerance.
/// Deterministic: the same wall gives the same examples everywhere.
/// </summary>
internal static class ThicknessQuadrature
{
    /// <summary>
    /// Most examples of one wall. Beyond it, the layers whose tolerance changes the phase least keep their nominal
    /// thickness.
    /// </summary>
    public const int MostExamples = 512;

    /// <summary>Thicknesses in metres of each example, in the layers' order, and its weight; the weights sum to 1.</summary>
    /// <param name="layers">The wall.</param>
    /// <param name="indices">Re √η of each layer.</param>
    /// <param name="wavelengthMetres">λ, metres.</param>
    public static IReadOnlyList<(double[] ThicknessMetres, double Weight)> Of(
        IReadOnlyList<Layer> layers, IReadOnlyList<double> indices, double wavelengthMetres)
    {
        int[] orders = OrdersOf(layers, indices, wavelengthMetres);
        List<(double[] ThicknessMetres, double Weight)> examples = [([.. layers.Select(layer => layer.ThicknessMetres)], 1)];
        for (int n = 0; n < orders.Length; n++)
        {
            if (orders[n] == 1)
            {
                continue;
            }

            var rule = new GaussLegendreRule(-1, 1, orders[n]);
            int layer = n;
            examples =
            [
                .. examples.SelectMany(example => Enumerable.Range(0, rule.Order).Select(i =>
                {
                    double[] moved = [.. example.ThicknessMetres];
                    moved[layer] += rule.GetAbscissa(i) * layers[layer].ToleranceMetres;
                    return (moved, example.Weight * rule.GetWeight(i) / 2);
                })),
            ];
        }

        return examples;
    }

    private static int[] OrdersOf(IReadOnlyList<Layer> layers, IReadOnlyList<double> indices, double wavelengthMetres)
    {
        // Phase of one round trip over half the range, rad. Two points are enough where it is small, and a rule of order n up to
        // about n − 2.
        double[] phases = [.. layers.Select((layer, n) => 4 * Math.PI / wavelengthMetres * indices[n] * layer.ToleranceMetres)];
        int[] orders =
        [
            .. phases.Select(phase => phase switch
            {
                0 => 1,
                < 0.15 => 2,
                _ => 2 + (int)Math.Ceiling(Math.Min(1.3 * phase, 60)),
            }),
        ];
        while (orders.Aggregate(1.0, (product, order) => product * order) > MostExamples)
        {
            int least = Enumerable.Range(0, orders.Length).Where(n => orders[n] > 1).MinBy(n => phases[n]);
            orders[least] = 1;
        }

        return orders;
    }
}
