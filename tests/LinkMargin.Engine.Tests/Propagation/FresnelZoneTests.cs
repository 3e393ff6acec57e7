using CsCheck;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Tests.Propagation;

public sealed class FresnelZoneTests
{
    [Theory] // R1 = √(λ/4·d) at mid path, λ = 299792458/2.44e9, worked by hand to three digits.
    [InlineData(1.5, 1.5, 0.304)]
    [InlineData(2.5, 2.5, 0.392)]
    [InlineData(5, 5, 0.554)]
    [InlineData(1, 9, 0.333)]
    public void Matches_values_worked_by_hand(double first, double second, double radius) =>
        Assert.Equal(
            radius, FresnelZone.FirstRadiusMetres(Frequency.FromMegahertz(2440).WavelengthMetres, first, second), 0.0005);

    [Fact]
    public void Has_no_width_at_either_end()
    {
        Assert.Equal(0, FresnelZone.FirstRadiusMetres(0.12, 0, 3));
        Assert.Equal(0, FresnelZone.FirstRadiusMetres(0.12, 3, 0));
        Assert.Equal(0, FresnelZone.FirstRadiusMetres(0.12, 0, 0));
    }

    [Fact, Law]
    public void The_way_round_over_its_edge_is_half_a_wavelength_longer_when_it_is_slender() =>
        Gen.Select(Gen.Double[20, 100], Gen.Double[20, 100]).ForAll((first, second) =>
        {
            double radius = FresnelZone.FirstRadiusMetres(0.12, first, second);
            double longer = double.Hypot(first, radius) + double.Hypot(second, radius) - first - second;
            Assert.InRange(longer, 0.06 * 0.995, 0.06);
            Assert.Equal(radius, FresnelZone.FirstRadiusMetres(0.12, second, first), 1e-12);
        });
}
