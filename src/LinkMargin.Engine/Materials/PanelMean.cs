using System.Buffers;
using System.Numerics;
using System.Runtime.Intrinsics;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Materials;

/// <summary>
/// The mean of a layered panel over both polarisations, a band's channels and examples within tolerance, computed for
/// each angle. <see cref="LayeredPanel"/> keeps a table of it.
/// </summary>
internal sealed class PanelMean
{
    private readonly SlabLanes[] slabs; // four channels each
    private readonly Vector256<double>[] channelWeights; // 0 where there is no channel
    private readonly (int[] Variants, double Weight)[] examples; // the thickness of each layer, by number
    private readonly int channelCount;

    public PanelMean(IReadOnlyList<Layer> layers, Band band)
    {
        foreach (Layer layer in layers)
        {
            if (!(layer.ThicknessMetres > 0) || !(layer.ToleranceMetres >= 0) || layer.ToleranceMetres > layer.ThicknessMetres)
            {
                throw new ArgumentOutOfRangeException(
                    nameof(layers), layer, "A layer's thickness must be above 0 and its tolerance from 0 to the thickness.");
            }
        }

        IReadOnlyList<(Frequency Frequency, double Weight)> all = BandQuadrature.Of(band);
        channelCount = all.Count;
        double[] indices = [.. layers.Select(l => Complex.Sqrt(ComplexPermittivity.Of(l.Substance, band.Equivalent)).Real)];
        IReadOnlyList<(double[] ThicknessMetres, double Weight)> thicknesses = ThicknessQuadrature.Of(layers, indices, band.Equivalent.WavelengthMetres);
        double[][] variants = [.. layers.Select((_, n) => thicknesses.Select(example => example.ThicknessMetres[n]).Distinct().ToArray())];
        examples = [.. thicknesses.Select(example => (variants.Select((each, n) => Array.IndexOf(each, example.ThicknessMetres[n])).ToArray(), example.Weight))];
        (Frequency Frequency, double Weight)[][] groups = [.. all.Chunk(ComplexLanes.Count)];
        channelWeights = [.. groups.Select(group => Vector256.Create([.. Filled(group.Select(channel => channel.Weight), 0)]))];
        slabs =
        [
            .. groups.Select(group => new SlabLanes(
                Filled(group.Select(channel => channel.Frequency.WavelengthMetres), group[^1].Frequency.WavelengthMetres),
                [.. layers.Select(layer => Filled(group.Select(channel => ComplexPermittivity.Of(layer.Substance, channel.Frequency)), ComplexPermittivity.Of(layer.Substance, group[^1].Frequency)))],
                variants)),
        ];
    }

    /// <summary>Slabs solved for one angle: examples × frequencies.</summary>
    public int Count => examples.Length * channelCount;

    /// <summary>The mean at one cosine of incidence.</summary>
    public PanelResponse At(double cosIncidence)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(cosIncidence);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(cosIncidence, 1);
        double cos = Math.Max(cosIncidence, LayeredSlab.LeastCosine), turned = 1 - (2 * cosIncidence * cosIncidence);
        SlabLayerLanes[] layers = ArrayPool<SlabLayerLanes>.Shared.Rent(slabs.Length * slabs[0].Variants);
        for (int group = 0; group < slabs.Length; group++)
        {
            slabs[group].Prepare(cos, layers.AsSpan(group * slabs[0].Variants));
        }

        // Squares about any one of the losses cancel little.
        double passed = 0, aboutDb = double.NaN;
        Vector256<double> reflected = default, inStepReal = default, inStepImaginary = default, offsDb = default, squares = default;
        Moments each = default;
        foreach ((int[] variants, double share) in examples)
        {
            double band = 0;
            for (int group = 0; group < slabs.Length; group++)
            {
                (SlabLanesResponse te, SlabLanesResponse tm) = slabs[group].Solve(cos, layers.AsSpan(group * slabs[0].Variants), variants);
                Vector256<double> transmittance = (te.Transmission.SquaredMagnitude + tm.Transmission.SquaredMagnitude) * 0.5, weight = share * channelWeights[group];
                band += Vector256.Sum(channelWeights[group] * transmittance);
                reflected += weight * (te.Reflection.SquaredMagnitude + tm.Reflection.SquaredMagnitude);

                // R of TM is that of the magnetic field. The reflected electric field along the incident one is R times the cosine of
                // twice the grazing angle.
                inStepReal += weight * (te.Reflection.Real + (turned * tm.Reflection.Real));
                inStepImaginary += weight * (te.Reflection.Imaginary + (turned * tm.Reflection.Imaginary));
                Vector256<double> lossDb = LossesDbOf(transmittance);
                aboutDb = double.IsNaN(aboutDb) ? lossDb[0] : aboutDb;
                Vector256<double> offDb = lossDb - Vector256.Create(aboutDb);
                offsDb += weight * offDb;
                squares += weight * offDb * offDb;
            }

            passed += share * band;
            each.Add(LayeredSlab.LossDbOf(band), share);
        }

        ArrayPool<SlabLayerLanes>.Shared.Return(layers);
        return new(
            LayeredSlab.LossDbOf(passed),
            Math.Max(0, 1 - passed - (Vector256.Sum(reflected) / 2)),
            Math.Sqrt(Math.Max(0, Vector256.Sum(squares) - (Vector256.Sum(offsDb) * Vector256.Sum(offsDb)))),
            each.StandardDeviation)
        {
            InStep = new Complex(Vector256.Sum(inStepReal) / 2, Vector256.Sum(inStepImaginary) / 2),
        };
    }

    // As LayeredSlab.LossDbOf.
    private static Vector256<double> LossesDbOf(Vector256<double> transmittances)
    {
        Vector256<double> most = Vector256.Create(LayeredSlab.GreatestLossDb);
        return Vector256.ConditionalSelect(
            Vector256.GreaterThan(transmittances, Vector256<double>.Zero), Vector256.Min(Vector256.Log(transmittances) * (-10 / Math.Log(10)), most), most);
    }

    // Something for every lane: what stands in those without a channel has no weight.
    private static T[] Filled<T>(IEnumerable<T> some, T rest)
    {
        T[] all = [.. some];
        return [.. all, .. Enumerable.Repeat(rest, ComplexLanes.Count - all.Length)];
    }

    /// <summary>
    /// Running weighted mean and sum of squares about it (West's update), without cancellation. MathNet's also computes skewness
    /// and kurtosis, which triples the time that a house's tables take.
    /// </summary>
    private struct Moments
    {
        private double weight;
        private double mean;
        private double squares;

        // For equal values rounding may make the sum slightly negative.
        public readonly double StandardDeviation => Math.Sqrt(Math.Max(0, squares / weight));

        public void Add(double value, double share)
        {
            weight += share;
            double step = value - mean;
            mean += step * share / weight;
            squares += share * step * (value - mean);
        }
    }
}
