using System.Numerics;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Materials;

/// <summary>
/// The mean of a layered panel over both polarisations, a band's channels and examples within tolerance, computed for
/// each angle. <see cref="LayeredPanel"/> keeps a table of it.
/// </summary>
internal sealed class PanelMean
{
    private readonly Sample[] samples;
    private readonly int perExample;

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

        IReadOnlyList<(Frequency Frequency, double Weight)> channels = BandQuadrature.Of(band);
        double[] indices = [.. layers.Select(l => Complex.Sqrt(ComplexPermittivity.Of(l.Substance, band.Equivalent)).Real)];
        perExample = channels.Count;
        samples =
        [
            .. from example in ThicknessQuadrature.Of(layers, indices, band.Equivalent.WavelengthMetres)
               from channel in channels
               let slab = Slab(layers, channel.Frequency, example.ThicknessMetres)
               select new Sample(slab, channel.Frequency.WavelengthMetres, example.Weight, channel.Weight),
        ];
    }

    /// <summary>Slabs solved for one angle: examples × frequencies.</summary>
    public int Count => samples.Length;

    /// <summary>The mean at one cosine of incidence.</summary>
    public PanelResponse At(double cosIncidence)
    {
        double passed = 0, reflected = 0, turned = 1 - (2 * cosIncidence * cosIncidence);
        Complex inStep = 0;
        Moments all = default, examples = default;
        for (int start = 0; start < samples.Length; start += perExample)
        {
            double band = 0;
            foreach (Sample sample in samples.AsSpan(start, perExample))
            {
                (SlabResponse te, SlabResponse tm) =
                    LayeredSlab.SolveBoth(sample.Layers, sample.WavelengthMetres, cosIncidence, ComplexPermittivity.Air);
                double transmittance = (te.Transmittance + tm.Transmittance) / 2;
                double weight = sample.ExampleWeight * sample.ChannelWeight;
                band += sample.ChannelWeight * transmittance;
                reflected += weight * (te.Reflectance + tm.Reflectance) / 2;

                // R of TM is that of the magnetic field. The reflected electric field along the incident one is R times the cosine of
                // twice the grazing angle.
                inStep += weight * (te.Reflection + (turned * tm.Reflection)) / 2;
                all.Add(LayeredSlab.LossDbOf(transmittance), weight);
            }

            passed += samples[start].ExampleWeight * band;
            examples.Add(LayeredSlab.LossDbOf(band), samples[start].ExampleWeight);
        }

        return new(
            LayeredSlab.LossDbOf(passed),
            Math.Max(0, 1 - passed - reflected),
            all.StandardDeviation,
            examples.StandardDeviation)
        {
            InStep = inStep,
        };
    }

    private static SlabLayer[] Slab(IReadOnlyList<Layer> layers, Frequency frequency, double[] thicknessMetres) =>
    [
        .. layers.Select((layer, n) =>
            new SlabLayer(ComplexPermittivity.Of(layer.Substance, frequency), thicknessMetres[n])),
    ];

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

    private sealed record Sample(SlabLayer[] Layers, double WavelengthMetres, double ExampleWeight, double ChannelWeight);
}
