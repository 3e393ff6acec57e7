using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Tests.Quantities;

public sealed class FrequencyTests
{
    [Fact]
    public void Is_the_same_in_each_unit()
    {
        Frequency frequency = Frequency.FromMegahertz(2440);
        Assert.Equal(2.44e9, frequency.Hertz, 1e-3);
        Assert.Equal(2440, frequency.Megahertz, 1e-9);
        Assert.Equal(2.44, frequency.Gigahertz, 1e-12);
    }

    [Theory] // 299792458 / f, by hand
    [InlineData(2402, 0.12481)]
    [InlineData(2440, 0.12287)]
    [InlineData(2480, 0.12088)]
    public void Has_the_wavelength_of_light(double megahertz, double metres) =>
        Assert.Equal(metres, Frequency.FromMegahertz(megahertz).WavelengthMetres, 0.000005);

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Refuses_what_is_no_frequency(double megahertz) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Frequency.FromMegahertz(megahertz));
}
