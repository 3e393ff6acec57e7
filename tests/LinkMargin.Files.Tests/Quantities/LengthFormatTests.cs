using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Tests.Quantities;

public sealed class LengthFormatTests
{
    private static readonly LengthFormat Feet = new(LengthUnit.Foot);

    [Theory]
    [InlineData(LengthUnit.Metre, 7.314, "7.31 m")]
    [InlineData(LengthUnit.Millimetre, 0.1, "0.10 m")]
    [InlineData(LengthUnit.Foot, 3.81, "12ft 6in")]
    [InlineData(LengthUnit.Inch, 0.1, "0ft 4in")]
    [InlineData(LengthUnit.Foot, -0.4064, "-1ft 4in")]
    [InlineData(LengthUnit.Foot, 0.6095, "2ft 0in")]
    [InlineData(LengthUnit.Foot, -0.001, "0ft 0in")]
    public void Results_are_in_the_units_of_the_house_file(LengthUnit unit, double metres, string brief) =>
        Assert.Equal(brief, new LengthFormat(unit).Brief(metres));

    [Theory]
    [InlineData(LengthUnit.Metre, "20.0", "m2", "20 m²")]
    [InlineData(LengthUnit.Foot, "215", "sq ft", "215.28 sq ft")]
    public void Areas_are_in_the_square_of_the_unit(LengthUnit unit, string area, string named, string exact)
    {
        var lengths = new LengthFormat(unit);
        Assert.Equal((area, named, exact), (lengths.Area(20), lengths.AreaUnit, lengths.ExactArea(20)));
    }

    // An inch is 0.0254 m exactly.
    [Theory]
    [InlineData(3.81, "3.81 m", "12ft 6in")]
    [InlineData(3.6576, "3.658 m", "12ft")]
    [InlineData(0.1524, "0.152 m", "6in")]
    [InlineData(0.0127, "0.013 m", "1/2in")]
    [InlineData(0.384175, "0.384 m", "1ft 3 1/8in")]
    [InlineData(0.3111, "0.311 m", "1ft 1/4in")]
    [InlineData(-0.3302, "-0.33 m", "-1ft 1in")]
    [InlineData(0.60959, "0.61 m", "2ft")]
    [InlineData(0, "0 m", "0in")]
    [InlineData(0.0005, "0 m", "0.0197in")]
    public void Messages_give_a_millimetre_or_a_sixteenth_of_an_inch(double metres, string metric, string feet)
    {
        Assert.Equal(metric, LengthFormat.Metric.Exact(metres));
        Assert.Equal(feet, Feet.Exact(metres));
    }

    [Fact]
    public void A_place_and_an_extent_have_their_units()
    {
        Assert.Equal("(1ft, 2ft 6in)", Feet.Place(new Point2(0.3048, 0.762)));
        Assert.Equal("(0.305, 0.762)", LengthFormat.Metric.Place(new Point2(0.3048, 0.762)));
        Assert.Equal("x from 0in to 1ft, y from 0in to 2ft", Feet.Extent(new Point2(0, 0), new Point2(0.3048, 0.6096)));
        Assert.Equal("x from 0 to 0.305 m, y from 0 to 0.61 m", LengthFormat.Metric.Extent(new Point2(0, 0), new Point2(0.3048, 0.6096)));
    }

    [Fact]
    public void A_range_of_anything_but_lengths_stays_as_it_is() =>
        Assert.Equal("0 dB to 60 dB", Feet.Allowed(new QuantityRange(0, 60, "dB")));

    /// <summary>What a message gives can be written into the file: it is read as the same length to half a sixteenth.</summary>
    [Fact, Law]
    public void A_length_of_a_message_reads_back() =>
        Gen.Double[-1200, 1200].ForAll(
            metres =>
            {
                Parsed back = LengthText.Parse(Feet.Exact(metres), LengthUnit.Foot);
                Assert.Null(back.Fault);
                Assert.Equal(metres, back.Value, LengthUnits.MetresPerInch / 32 * 1.0001);
            });

    /// <summary>Both ends that a message gives as allowed are allowed.</summary>
    [Fact, Law]
    public void An_allowed_range_is_allowed_at_both_ends() =>
        Gen.Select(Gen.Double[-1000, 1000], Gen.Double[0.01, 500]).ForAll(
            (least, length) =>
            {
                QuantityRange range = new(least, least + length, "m");
                string[] ends = Feet.Allowed(range).Split(" to ");
                Assert.All(ends, end => Assert.InRange(LengthText.Parse(end, LengthUnit.Foot).Value, range.Least - 1e-9, range.Greatest + 1e-9));
            });
}
