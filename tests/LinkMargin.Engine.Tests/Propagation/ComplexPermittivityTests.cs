using System.Numerics;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Propagation;

public sealed class ComplexPermittivityTests
{
    [Fact]
    public void Matches_the_published_properties_at_2440_MHz()
    {
        Frequency frequency = Frequency.FromMegahertz(2440);
        Assert.All(ReferenceTable.Read("p2040-properties-2440mhz.csv").Rows, row =>
        {
            Complex eta = ComplexPermittivity.Of(SubstanceTable.Of(row), frequency);
            row.AssertPrinted("relative_permittivity", eta.Real, 5);
            row.AssertPrinted("imaginary_permittivity", -eta.Imaginary, 5);
            row.AssertPrinted(
                "conductivity_s_per_m", ComplexPermittivity.ConductivitySiemensPerMetre(SubstanceTable.Of(row), frequency), 5);
            double nepers = -Complex.Sqrt(eta).Imaginary * 2 * Math.PI / frequency.WavelengthMetres;
            row.AssertPrinted("bulk_db_per_m", nepers * 20 / Math.Log(10), 5);
        });
    }

    [Fact]
    public void Matches_the_values_another_program_publishes_at_9_GHz()
    {
        Frequency frequency = Frequency.FromMegahertz(9000);
        Assert.All(ReferenceTable.Read("p2040-properties-9ghz.csv").Rows, row =>
        {
            row.AssertPrinted("relative_permittivity", ComplexPermittivity.Of(SubstanceTable.Of(row), frequency).Real, 5);
            row.AssertPrinted(
                "conductivity_s_per_m", ComplexPermittivity.ConductivitySiemensPerMetre(SubstanceTable.Of(row), frequency), 5);
        });
    }

    [Fact]
    public void Is_within_rounding_of_the_texts_own_17_98()
    {
        double imaginary = -ComplexPermittivity.Of(new Dielectric(1, 0, 1, 0), Frequency.FromMegahertz(1000)).Imaginary;
        Assert.InRange(imaginary, 17.975, 17.985);
    }

    [Fact]
    public void Air_is_one_at_any_frequency() => Assert.Equal(Complex.One, ComplexPermittivity.Of(null, Frequency.FromMegahertz(300_000)));

    [Fact]
    public void Every_channel_lies_where_the_materials_were_measured() =>
        Assert.All(Scene.Compile(SimpleHouse.OfWalls()).Band.Channels, channel =>
            Assert.InRange(channel.Gigahertz, ComplexPermittivity.LeastGigahertz, ComplexPermittivity.GreatestGigahertz));

    [Theory]
    [InlineData(1, 0, false)]
    [InlineData(0.999, 0, true)]
    [InlineData(2, -0.001, true)]
    [InlineData(double.NaN, 0, true)]
    [InlineData(2, double.PositiveInfinity, true)]
    public void Refuses_what_no_passive_material_has(double a, double c, bool refused)
    {
        var substance = new Dielectric(a, 0, c, 0);
        Exception? reflected = Record.Exception(() => ComplexPermittivity.Of(substance, Frequency.FromMegahertz(2000)));
        Assert.Equal(refused, reflected is ArgumentOutOfRangeException);
    }
}
