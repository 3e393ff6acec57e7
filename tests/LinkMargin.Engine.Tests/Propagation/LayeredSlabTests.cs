using System.Numerics;
using CsCheck;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Tests.Propagation;

public sealed class LayeredSlabTests
{
    private static readonly Frequency Middle = Frequency.FromMegahertz(2440);
    private static readonly double Wavelength = Middle.WavelengthMetres;
    private static readonly Gen<Polarisation> Either = Gen.Bool.Select(b => (Polarisation)(b ? 1 : 0));
    private static readonly Gen<double> Cosine = Gen.Frequency((9, Gen.Double[0, 1]), (1, Gen.Const(0.0)), (1, Gen.Const(1.0)));

    private static readonly Gen<SlabLayer[]> Lossless =
        Gen.Select(Gen.Frequency((3, Gen.Double[1, 12]), (1, Gen.Const(1.0))), Gen.Double[0, 0.3], (e, d) => new SlabLayer(e, d))
            .Array[1, 8];

    private static readonly Gen<SlabLayer[]> Lossy =
        Gen.Select(
            Gen.Double[1, 12],
            Gen.Frequency((4, Gen.Double[0, 4]), (1, Gen.Const(0.0)), (1, Gen.Const(7.4e7))),
            Gen.Double[0, 0.3],
            (real, imaginary, d) => new SlabLayer(new Complex(real, -imaginary), d)).Array[1, 8];

    [Fact]
    public void Matches_single_slabs_worked_by_chain_matrices() =>
        Assert.All(ReferenceTable.Read("p2040-slab-losses-2440mhz.csv").Rows, row =>
        {
            SlabLayer[] slab = [new(ComplexPermittivity.Of(SubstanceTable.Of(row), Middle), row.Number("thickness_mm") / 1000)];
            row.AssertPrinted("normal", LossDb(slab, 0, Polarisation.TransverseElectric));
            row.AssertPrinted("normal", LossDb(slab, 0, Polarisation.TransverseMagnetic));
            row.AssertPrinted("te_45", LossDb(slab, 45, Polarisation.TransverseElectric));
            row.AssertPrinted("tm_45", LossDb(slab, 45, Polarisation.TransverseMagnetic));
            row.AssertPrinted("te_60", LossDb(slab, 60, Polarisation.TransverseElectric));
            row.AssertPrinted("tm_60", LossDb(slab, 60, Polarisation.TransverseMagnetic));
        });

    [Fact]
    public void Matches_layered_builds_worked_by_chain_matrices() =>
        Assert.All(ReferenceTable.Read("p2040-layered-losses.csv").Rows, row =>
        {
            foreach (int megahertz in (int[])[2402, 2440, 2480])
            {
                Frequency frequency = Frequency.FromMegahertz(megahertz);
                SlabLayer[] layers = At(SubstanceTable.Layers(row.Text("layers")), frequency);
                SlabResponse response = LayeredSlab.Solve(
                    layers, frequency.WavelengthMetres, 1, Polarisation.TransverseElectric);
                row.AssertPrinted($"normal_{megahertz}", response.LossDb);
            }
        });

    [Fact]
    public void Matches_the_multilayer_values_of_an_independent_program()
    {
        SlabLayer[] layers = [new(Squared(2, 4), 2), new(Squared(3, 0.3), 3)];
        Complex exitIndex = new(1, -0.1);
        Assert.All(ReferenceTable.Read("multilayer-transfer-matrix.csv").Rows, row =>
        {
            bool te = row.Text("polarisation") == "s";
            Polarisation polarisation = te ? Polarisation.TransverseElectric : Polarisation.TransverseMagnetic;
            SlabResponse response = LayeredSlab.Solve(layers, 100, Math.Cos(0.1), polarisation, exitIndex * exitIndex);
            Complex transmission = te ? response.Transmission : response.Transmission / exitIndex;
            Assert.Equal(row.Number("r_real"), response.Reflection.Real, 1e-13);
            Assert.Equal(-row.Number("r_imaginary"), response.Reflection.Imaginary, 1e-13);
            Assert.Equal(row.Number("t_real"), transmission.Real, 1e-13);
            Assert.Equal(-row.Number("t_imaginary"), transmission.Imaginary, 1e-13);
            Assert.Equal(row.Number("reflected_power"), response.Reflectance, 1e-13);

            // Power into an absorbing half space: Re s' for TE, Re (s'/η') of the magnetic field for TM, over cos θ.
            Complex s = Complex.Sqrt((exitIndex * exitIndex) - Math.Pow(Math.Sin(0.1), 2));
            Complex admittance = te ? s : s / (exitIndex * exitIndex);
            Assert.Equal(row.Number("transmitted_power"), response.Transmittance * admittance.Real / Math.Cos(0.1), 1e-13);
        });
    }

    [Fact]
    public void A_lossless_half_wave_slab_is_not_there()
    {
        SlabLayer[] slab = [new(6.31, Wavelength / 2 / Math.Sqrt(6.31))];
        Assert.Equal(0, LossDb(slab, 0, Polarisation.TransverseElectric), 1e-12);
    }

    [Fact]
    public void A_lossless_quarter_wave_slab_of_four_loses_25_over_16()
    {
        SlabLayer[] slab = [new(4, Wavelength / 8)];
        Assert.Equal(10 * Math.Log10(25 / 16.0), LossDb(slab, 0, Polarisation.TransverseElectric), 1e-12);
    }

    [Fact]
    public void A_thin_conductive_film_follows_its_sheet_resistance()
    {
        // −20 lg |T| = 20 lg(1 + Z0/(2·Rs)): 5, 10, 20 ohm per square give 31.7, 25.9, 20.4 dB.
        foreach ((double ohms, double lossDb) in ((double, double)[])[(5, 31.7), (10, 25.9), (20, 20.4)])
        {
            const double Thickness = 1e-8;
            Complex eta = ComplexPermittivity.Of(new Dielectric(1, 0, 1 / (ohms * Thickness), 0), Middle);
            Assert.Equal(lossDb, LossDb([new(eta, Thickness)], 0, Polarisation.TransverseElectric), 0.05);
        }
    }

    [Fact]
    public void At_Brewsters_angle_the_TM_wave_is_not_reflected()
    {
        double brewster = double.RadiansToDegrees(Math.Atan(Math.Sqrt(6.31)));
        Assert.Equal(68.29, brewster, 0.005);
        SlabLayer[] slab = [new(6.31, 0.0317)];
        Assert.Equal(0, Response(slab, brewster, Polarisation.TransverseMagnetic).Reflection.Magnitude, 1e-12);
        Assert.True(Response(slab, brewster, Polarisation.TransverseElectric).Reflectance > 0.3);
    }

    [Fact]
    public void Metal_throws_everything_back_without_overflow()
    {
        Complex metal = ComplexPermittivity.Of(new Dielectric(1, 0, 1e7, 0), Middle);
        foreach (double thickness in (double[])[1e-4, 1e-3, 1, 1000])
        {
            SlabResponse response = LayeredSlab.Solve([new(metal, thickness)], Wavelength, 1, Polarisation.TransverseElectric);
            Assert.Equal(LayeredSlab.GreatestLossDb, response.LossDb);
            Assert.Equal(-1, response.Reflection.Real, 0.001);
            Assert.InRange(response.Absorptance, 0, 0.001);
        }
    }

    [Fact]
    public void A_foil_just_thin_enough_to_see_through_stays_below_the_cap()
    {
        Complex metal = ComplexPermittivity.Of(new Dielectric(1, 0, 1e7, 0), Middle);
        Assert.InRange(LossDb([new(metal, 1e-5)], 0, Polarisation.TransverseElectric), 80, LayeredSlab.GreatestLossDb - 1);
    }

    [Fact]
    public void No_layers_and_layers_of_air_change_nothing_in_magnitude()
    {
        foreach (double cos in (double[])[0, 1e-7, 0.3, 1])
        {
            SlabResponse none = LayeredSlab.Solve([], Wavelength, cos, Polarisation.TransverseElectric);
            Assert.Equal(1, none.Transmission.Magnitude, 1e-15);
            SlabResponse air = LayeredSlab.Solve([new(1, 0.1), new(1, 0.2)], Wavelength, cos, Polarisation.TransverseMagnetic);
            Assert.Equal(1, air.Transmission.Magnitude, 1e-12);
            Assert.Equal(0, air.Reflection.Magnitude, 1e-12);
        }
    }

    [Fact, Law]
    public void Grazing_waves_are_thrown_back() =>
        Gen.Select(Lossy, Either).ForAll((layers, polarisation) =>
        {
            SlabLayer[] solid = [new(new Complex(3, -0.1), 0.02), .. layers];
            SlabResponse grazing = LayeredSlab.Solve(solid, Wavelength, 0, polarisation);
            Assert.InRange(grazing.Transmittance, 0, 1e-6);
            Assert.InRange(grazing.Reflectance, 0.999, 1 + 1e-9);
            Assert.Equal(grazing, LayeredSlab.Solve(solid, Wavelength, LayeredSlab.LeastCosine, polarisation));
        });

    // The seeds were in resonance near grazing.
    [Fact, Law]
    public void Lossless_layers_keep_all_energy() =>
        Gen.Select(Lossless, Cosine, Either).ForAll(
            (layers, cos, polarisation) => Assert.Equal(
                0, LayeredSlab.Solve(layers, Wavelength, cos, polarisation).Absorptance, Rounding(cos)),
            also: [6190484631751041456, 796264638326956869, 1283742249047804037, 5286109905709543810, 7480133224313797279]);

    [Fact, Law]
    public void Lossy_layers_never_make_energy_and_never_leave_the_numbers() =>
        Gen.Select(Lossy, Cosine, Either).ForAll(
            (layers, cos, polarisation) =>
            {
                SlabResponse response = LayeredSlab.Solve(layers, Wavelength, cos, polarisation);
                Assert.InRange(response.Transmittance, 0, 1 + Rounding(cos));
                Assert.InRange(response.Reflectance, 0, 1 + Rounding(cos));
                Assert.InRange(response.Absorptance, -Rounding(cos), 1);
                Assert.InRange(response.LossDb, -1e-9, LayeredSlab.GreatestLossDb);
            },
            also: [619518768685222789, 4205797407126872420, 3515520779795881288, 4569563096998700976]);

    [Fact, Law]
    public void From_either_side_the_same_passes() =>
        Gen.Select(Lossy, Cosine, Either).ForAll((layers, cos, polarisation) =>
        {
            SlabResponse there = LayeredSlab.Solve(layers, Wavelength, cos, polarisation);
            SlabResponse back = LayeredSlab.Solve([.. layers.Reverse()], Wavelength, cos, polarisation);
            Assert.Equal(0, (there.Transmission - back.Transmission).Magnitude, 1e-9 * (1e-12 + there.Transmission.Magnitude));
        });

    [Fact, Law]
    public void A_layer_cut_in_two_is_the_same_layer() =>
        Gen.Select(Lossy, Cosine, Either, Gen.Double[0, 1]).ForAll((layers, cos, polarisation, share) =>
        {
            SlabLayer first = layers[0];
            SlabLayer[] cut =
            [
                first with { ThicknessMetres = share * first.ThicknessMetres },
                first with { ThicknessMetres = (1 - share) * first.ThicknessMetres },
                .. layers.Skip(1),
            ];
            SlabResponse whole = LayeredSlab.Solve(layers, Wavelength, cos, polarisation);
            SlabResponse parts = LayeredSlab.Solve(cut, Wavelength, cos, polarisation);
            Assert.Equal(0, (whole.Transmission - parts.Transmission).Magnitude, 1e-9);
            Assert.Equal(0, (whole.Reflection - parts.Reflection).Magnitude, 1e-9);
        });

    [Fact, Law]
    public void At_normal_incidence_both_polarisations_pass_alike() =>
        Lossy.ForAll(layers =>
        {
            SlabResponse te = LayeredSlab.Solve(layers, Wavelength, 1, Polarisation.TransverseElectric);
            SlabResponse tm = LayeredSlab.Solve(layers, Wavelength, 1, Polarisation.TransverseMagnetic);
            Assert.Equal(te.Transmittance, tm.Transmittance, 1e-11);
            Assert.Equal(te.Reflectance, tm.Reflectance, 1e-11);
        });

    [Fact, Law]
    public void A_hair_of_angle_moves_the_answer_by_a_hair() =>
        Gen.Select(Lossy, Gen.Double[0.05, 0.99], Either).ForAll((layers, cos, polarisation) =>
        {
            SlabResponse here = LayeredSlab.Solve(layers, Wavelength, cos, polarisation);
            SlabResponse there = LayeredSlab.Solve(layers, Wavelength, cos + 1e-9, polarisation);
            Assert.InRange(Math.Abs(here.Transmittance - there.Transmittance), 0, 1e-5);
            Assert.InRange(Math.Abs(here.Reflectance - there.Reflectance), 0, 1e-5);
        });

    [Theory]
    [InlineData(0, 1)]
    [InlineData(0.12, -1e-9)]
    [InlineData(0.12, 1.000001)]
    public void Refuses_a_wave_that_cannot_be(double wavelength, double cos) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            LayeredSlab.Solve([new(4, 0.1)], wavelength, cos, Polarisation.TransverseElectric));

    private static SlabLayer[] At(Layer[] layers, Frequency frequency) =>
        [.. layers.Select(layer => new SlabLayer(ComplexPermittivity.Of(layer.Substance, frequency), layer.ThicknessMetres))];

    private static SlabResponse Response(SlabLayer[] layers, double degrees, Polarisation polarisation) =>
        LayeredSlab.Solve(layers, Wavelength, Math.Cos(double.DegreesToRadians(degrees)), polarisation);

    private static double LossDb(SlabLayer[] layers, double degrees, Polarisation polarisation) =>
        Response(layers, degrees, polarisation).LossDb;

    /// <summary>η of an index n + jκ of the other sign convention.</summary>
    private static Complex Squared(double real, double imaginary) =>
        new Complex(real, -imaginary) * new Complex(real, -imaginary);

    // In a resonance near grazing the field in the layers is up to 1/cos θ times as strong as outside, and so is its rounding.
    private static double Rounding(double cos) => Math.Max(1e-12, 1e-15 / Math.Max(cos, LayeredSlab.LeastCosine));
}
