using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Tests.Quantities;

public sealed class QuantityTests
{
    [Theory]
    [InlineData("15", 15)]
    [InlineData("15 dB", 15)]
    [InlineData("15db", 15)]
    [InlineData("-2.5 dB", -2.5)]
    public void Decibels_are_read_with_or_without_the_unit(string text, double db) =>
        Assert.Equal(Parsed.Of(db), Quantity.Decibels.Parse(text));

    [Fact]
    public void Each_kind_takes_its_own_units()
    {
        Assert.Equal(-90, Quantity.LevelDbm.Parse("-90 dBm").Value);
        Assert.Equal(-2, Quantity.Gain.Parse("-2 dBi").Value);
        Assert.Equal(30, Quantity.Degrees.Parse("30°").Value);
        Assert.Equal(30, Quantity.Degrees.Parse("30 deg").Value);
        Assert.Equal(0.5, Quantity.Plain.Parse("0.5").Value);
    }

    [Theory]
    [InlineData("15 dBm", "has the unit 'dBm', but this is a figure in dB; write 15 or 15 dB")]
    [InlineData("15,5 dB", "has a decimal comma; write 15.5")]
    [InlineData("NaN", "is not a finite number")]
    [InlineData("1e999", "is too large to be a finite number")]
    [InlineData("much", "is not a figure in dB; write 15 or 15 dB")]
    [InlineData("-", "is not a figure in dB; write 15 or 15 dB")]
    public void What_is_not_in_decibels_says_why(string text, string fault) =>
        Assert.Equal(fault, Quantity.Decibels.Parse(text).Fault);

    [Fact]
    public void A_range_allows_both_its_ends_and_nothing_beyond()
    {
        QuantityRange range = new(0.5, 20, "m");
        Assert.True(range.Contains(0.5) && range.Contains(20));
        Assert.False(range.Contains(double.BitDecrement(0.5)) || range.Contains(double.BitIncrement(20)) || range.Contains(double.NaN));
    }
}
