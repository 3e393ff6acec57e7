using CsCheck;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Tests.Propagation;

public sealed class LayeredPanelTests
{
    private const string FloorBay = "plasterboard 12.7 + air 235 + chipboard 18.3";

    private static readonly Band LowEnergy = new(Enumerable.Range(0, 40).Select(k => Frequency.FromMegahertz(2402 + (2 * k))));

    private static readonly Gen<Layer[]> Builds =
        Gen.Select(Gen.Int[0, SubstanceTable.All.Count], Gen.Double[0.002, 0.15], Gen.Double[0, 0.1])
            .Select((substance, thickness, share) =>
                new Layer(SubstanceTable.All.ElementAtOrDefault(substance), "x", thickness, share * thickness))
            .Array[1, 3];

    [Fact]
    public void Matches_the_band_means_worked_by_chain_matrices() =>
        Assert.All(ReferenceTable.Read("p2040-layered-losses.csv").Rows, row =>
        {
            var mean = new PanelMean(SubstanceTable.Layers(row.Text("layers")), LowEnergy);
            foreach (int degrees in (int[])[0, 30, 45, 60, 75])
            {
                row.AssertPrinted($"band_{degrees}", mean.At(Math.Cos(double.DegreesToRadians(degrees))).TransmissionLossDb);
            }
        });

    [Theory]
    [InlineData(FloorBay, 0)]
    [InlineData(FloorBay, 10)]
    [InlineData("glass 6", 0)]
    [InlineData("concrete 150", 10)]
    [InlineData("ceiling board 1", 0)]
    [InlineData("air 100", 10)]
    public void The_table_is_the_mean_to_a_hundredth_of_a_decibel(string build, double toleranceMillimetres)
    {
        var panel = new LayeredPanel(SubstanceTable.Layers(build, toleranceMillimetres), Band.Bluetooth);
        for (double degrees = 0; degrees <= 90; degrees += 0.0703)
        {
            AssertOnTable(panel, Math.Cos(double.DegreesToRadians(degrees)));
        }

        for (double cos = 0.1; cos > LayeredSlab.LeastCosine; cos *= 0.71)
        {
            AssertOnTable(panel, cos);
        }
    }

    [Fact]
    public void Four_frequencies_stand_for_79_channels()
    {
        Layer[] layers = SubstanceTable.Layers("plasterboard 12.7 + air 286 + chipboard 18.3");
        var mean = new PanelMean(layers, Band.Bluetooth);
        Assert.Equal(4, mean.Count);
        foreach (double cos in (double[])[1, 0.8, 0.6, 0.4, 0.2, 0.1])
        {
            (double transmittance, double spreadDb) = OneByOne(layers, Band.Bluetooth, cos);
            PanelResponse response = mean.At(cos);
            Assert.Equal(-10 * Math.Log10(transmittance), response.TransmissionLossDb, 1e-4);
            Assert.Equal(spreadDb, response.SpreadDb, 2e-3);
            Assert.Equal(0, response.ToleranceSpreadDb, 1e-9);
        }
    }

    [Fact]
    public void A_band_of_few_channels_is_taken_channel_by_channel()
    {
        Band advertising = new(new double[] { 2402, 2426, 2480 }.Select(Frequency.FromMegahertz));
        IReadOnlyList<(Frequency Frequency, double Weight)> nodes = BandQuadrature.Of(advertising);
        Assert.Equal(advertising.Channels, nodes.Select(node => node.Frequency));
        Assert.All(nodes, node => Assert.Equal(1 / 3.0, node.Weight, 1e-15));
    }

    [Fact]
    public void The_bands_rule_keeps_the_mean_of_any_polynomial_to_the_seventh_degree()
    {
        IReadOnlyList<(Frequency Frequency, double Weight)> nodes = BandQuadrature.Of(Band.Bluetooth);
        for (int power = 0; power <= 7; power++)
        {
            double Of(Frequency f) => Math.Pow((f.Megahertz - 2441) / 39, power);
            Assert.Equal(Band.Bluetooth.Channels.Average(Of), nodes.Sum(node => node.Weight * Of(node.Frequency)), 1e-12);
        }
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(10)]
    [InlineData(25)]
    [InlineData(60)]
    public void The_mean_over_tolerance_is_that_of_a_great_many_examples(double toleranceMillimetres)
    {
        Layer[] layers = SubstanceTable.Layers(FloorBay);
        layers[1] = layers[1] with { ToleranceMetres = toleranceMillimetres / 1000 };
        var mean = new PanelMean(layers, Band.Bluetooth);
        foreach (double cos in (double[])[1, 0.7, 0.4])
        {
            const int Examples = 400;
            double[] passed =
            [
                .. Enumerable.Range(0, Examples).Select(i => OneByOne(
                    [layers[0], Shifted(layers[1], (((i + 0.5) * 2 / Examples) - 1) * layers[1].ToleranceMetres), layers[2]],
                    Band.Bluetooth,
                    cos,
                    every: 6).Transmittance),
            ];
            double[] lossesDb = [.. passed.Select(t => -10 * Math.Log10(t))];
            double centreDb = lossesDb.Average();
            PanelResponse response = mean.At(cos);
            Assert.Equal(-10 * Math.Log10(passed.Average()), response.TransmissionLossDb, 0.005);
            Assert.Equal(Math.Sqrt(lossesDb.Average(l => (l - centreDb) * (l - centreDb))), response.ToleranceSpreadDb, 0.05);
        }
    }

    [Fact]
    public void Many_toleranced_layers_stay_within_the_bound_on_examples_and_lose_little()
    {
        Layer[] layers = SubstanceTable.Layers(string.Join(" + ", Enumerable.Repeat("plasterboard 12.5 + air 20", 6)), 2);
        var mean = new PanelMean(layers, Band.Bluetooth);
        Assert.InRange(mean.Count, 2, ThicknessQuadrature.MostExamples * BandQuadrature.Nodes);
    }

    [Fact]
    public void Spread_grows_with_tolerance_and_is_none_without()
    {
        Layer[] layers = SubstanceTable.Layers(FloorBay);
        double last = 0;
        foreach (double tolerance in (double[])[0, 0.001, 0.005, 0.015])
        {
            layers[1] = layers[1] with { ToleranceMetres = tolerance };
            double spreadDb = new PanelMean(layers, Band.Bluetooth).At(0.8).ToleranceSpreadDb;
            Assert.True(tolerance == 0 ? spreadDb < 1e-9 : spreadDb > last);
            last = spreadDb;
        }
    }

    [Fact, Law]
    public void Every_share_is_a_share_and_they_make_one() =>
        Gen.Select(Builds, Gen.Double[0, 1]).ForAll(
            (layers, cos) =>
            {
                var panel = new LayeredPanel(layers, Band.Bluetooth);
                PanelResponse response = panel.AtCosine(cos);
                Assert.InRange(response.TransmissionLossDb, -1e-9, LayeredSlab.GreatestLossDb);
                Assert.InRange(response.Absorptance, 0, 1);
                Assert.InRange(response.Reflectance, 0, 1);
                Assert.Equal(1, response.Transmittance + response.Reflectance + response.Absorptance, 1e-12);
                Assert.Equal(1, panel.DiffuseTransmittance + panel.DiffuseReflectance + panel.DiffuseAbsorptance, 1e-12);
                Assert.InRange(response.SpreadDb, 0, 60);
                Assert.InRange(response.ToleranceSpreadDb, 0, response.SpreadDb + 2);
            },
            cases: 20);

    [Fact]
    public void A_tolerance_that_changes_nothing_has_no_spread()
    {
        // Air before a board, more or less of it: all examples are the same.
        Layer[] layers =
        [
            new(null, "air", 0.09090909090909091, 0.00819272256746827),
            new(new(2.73, 0, 0.0085, 0.9395), "board", 0.03959754788094162, 0),
        ];
        Assert.Equal(0, new LayeredPanel(layers, Band.Bluetooth).AtCosine(1).ToleranceSpreadDb, 1e-6);
    }

    [Fact]
    public void A_lossless_panel_keeps_all_power()
    {
        var panel = new LayeredPanel(
            [
                new(new(6.31, 0, 0, 0), "x", 0.006, 0.0002),
                new(null, "air", 0.016, 0.001),
                new(new(2.73, 0, 0, 0), "y", 0.0125, 0),
            ],
            Band.Bluetooth);
        Assert.Equal(0, panel.DiffuseAbsorptance, 1e-12);
        for (double cos = 0; cos <= 1; cos += 0.01)
        {
            Assert.Equal(0, panel.AtCosine(cos).Absorptance, 1e-12);
        }
    }

    [Fact]
    public void Both_faces_pass_alike_and_may_absorb_differently()
    {
        var panel = new LayeredPanel(SubstanceTable.Layers("plasterboard 12.7 + concrete 100"), Band.Bluetooth);
        LayeredPanel reversed = panel.Reversed();
        Assert.Equal(panel.DiffuseTransmittance, reversed.DiffuseTransmittance, 1e-12);
        Assert.NotEqual(panel.DiffuseAbsorptance, reversed.DiffuseAbsorptance, 0.01);
        foreach (double degrees in (double[])[0, 20, 50, 80, 89])
        {
            Assert.Equal(panel.At(degrees).TransmissionLossDb, reversed.At(degrees).TransmissionLossDb, 0.02);
        }
    }

    [Theory]
    [InlineData("glass 6")]
    [InlineData(FloorBay)]
    [InlineData("concrete 150")]
    public void Diffuse_means_are_the_cosine_weighted_means_over_angle(string build)
    {
        var panel = new LayeredPanel(SubstanceTable.Layers(build), Band.Bluetooth);
        const int Steps = 2000;
        double transmittance = 0, absorptance = 0;
        for (int i = 0; i < Steps; i++)
        {
            double theta = Math.PI / 2 * (i + 0.5) / Steps, weight = 2 * Math.Sin(theta) * Math.Cos(theta) * Math.PI / 2 / Steps;
            PanelResponse response = panel.AtCosine(Math.Cos(theta));
            transmittance += weight * response.Transmittance;
            absorptance += weight * response.Absorptance;
        }

        Assert.Equal(transmittance, panel.DiffuseTransmittance, 1e-3);
        Assert.Equal(absorptance, panel.DiffuseAbsorptance, 1e-3);
    }

    [Fact]
    public void Metal_is_opaque_and_throws_back_at_every_angle()
    {
        var panel = new LayeredPanel([new(new Dielectric(1, 0, 1e7, 0), "metal", 0.001, 0)], Band.Bluetooth);
        foreach (double degrees in (double[])[0, 45, 89, 90])
        {
            Assert.Equal(LayeredSlab.GreatestLossDb, panel.At(degrees).TransmissionLossDb);
        }

        Assert.InRange(panel.DiffuseReflectance, 0.998, 1);
    }

    [Theory]
    [InlineData(LayeredPanel.GreatestComfortDegrees - 1e-9, false)]
    [InlineData(LayeredPanel.GreatestComfortDegrees + 1e-9, true)]
    public void Says_when_incidence_is_grazing(double degrees, bool isSaid) =>
        Assert.Equal(isSaid, LayeredPanel.CautionAt(Math.Cos(double.DegreesToRadians(degrees))) is not null);

    [Theory]
    [InlineData(0, 0, true)]
    [InlineData(0.01, 0.01, false)]
    [InlineData(0.01, 0.0101, true)]
    [InlineData(0.01, -1e-6, true)]
    [InlineData(double.NaN, 0, true)]
    public void Refuses_thicknesses_that_cannot_be(double thickness, double tolerance, bool refused)
    {
        Exception? reflected = Record.Exception(() => new PanelMean([new(null, "air", thickness, tolerance)], Band.Bluetooth));
        Assert.Equal(refused, reflected is ArgumentOutOfRangeException);
    }

    [Fact]
    public void Refuses_no_layers_and_angles_behind_the_panel()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new LayeredPanel([], Band.Bluetooth));
        var panel = new LayeredPanel(SubstanceTable.Layers("glass 6"), Band.Bluetooth);
        Assert.Throws<ArgumentOutOfRangeException>(() => panel.At(90.001));
        Assert.Throws<ArgumentOutOfRangeException>(() => panel.At(-0.001));
    }

    private static void AssertOnTable(LayeredPanel panel, double cos)
    {
        PanelResponse exact = panel.Mean.At(cos), read = panel.AtCosine(cos);
        Assert.Equal(exact.TransmissionLossDb, read.TransmissionLossDb, LayeredPanel.TableToleranceDb);
        Assert.Equal(exact.Reflectance, read.Reflectance, 1e-3);
        Assert.Equal(exact.Absorptance, read.Absorptance, 1e-3);
        Assert.Equal(exact.SpreadDb, read.SpreadDb, 0.06);
    }

    private static Layer Shifted(Layer layer, double metres) => layer with { ThicknessMetres = layer.ThicknessMetres + metres };

    /// <summary>Every channel (or every so many) by itself, at the nominal thicknesses.</summary>
    private static (double Transmittance, double SpreadDb) OneByOne(Layer[] layers, Band band, double cos, int every = 1)
    {
        double[] passed =
        [
            .. band.Channels.Where((_, k) => k % every == 0).Select(frequency =>
            {
                SlabLayer[] slab =
                    [.. layers.Select(l => new SlabLayer(ComplexPermittivity.Of(l.Substance, frequency), l.ThicknessMetres))];
                return Enum.GetValues<Polarisation>().Average(p =>
                    LayeredSlab.Solve(slab, frequency.WavelengthMetres, cos, p).Transmittance);
            }),
        ];
        double[] lossesDb = [.. passed.Select(t => -10 * Math.Log10(t))];
        double meanDb = lossesDb.Average();
        return (passed.Average(), Math.Sqrt(lossesDb.Average(l => (l - meanDb) * (l - meanDb))));
    }
}
