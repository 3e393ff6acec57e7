using LinkMargin.Cli.Output;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Cli.Tests.Output;

public sealed class LengthWordsTests
{
    [Theory]
    [InlineData(LengthUnit.Metre, 7.314, "7.31 m", "7.31 m")]
    [InlineData(LengthUnit.Millimetre, 0.1, "0.10 m", "0.10 m")]
    [InlineData(LengthUnit.Foot, 3.81, "12ft 6in", "12ft 6in (3.81 m)")]
    [InlineData(LengthUnit.Inch, 0.1, "0ft 4in", "0ft 4in (0.10 m)")]
    public void Lengths_are_said_in_the_units_of_the_house_file(LengthUnit unit, double metres, string brief, string full)
    {
        var words = new LengthWords(unit);

        Assert.Equal(brief, words.Brief(metres));
        Assert.Equal(full, words.InFull(metres));
    }

    [Theory]
    [InlineData(LengthUnit.Metre, "20.0", "m2")]
    [InlineData(LengthUnit.Foot, "215", "sq ft")]
    public void Areas_are_said_in_the_square_of_the_unit(LengthUnit unit, string area, string named)
    {
        var words = new LengthWords(unit);

        Assert.Equal(area, words.Area(20));
        Assert.Equal(named, words.AreaUnit);
    }

    [Fact]
    public void Twelve_inches_become_a_foot() => Assert.Equal("2ft 0in", new LengthWords(LengthUnit.Foot).Brief(0.6095));
}
