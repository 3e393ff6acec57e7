using System.Globalization;
using CsCheck;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Tests.Quantities;

public sealed class LengthTextTests
{
    // One inch is 0.0254 m and one foot 0.3048 m exactly, so the metres here are worked by hand from the text.
    [Theory]
    [InlineData("3.81 m", 3.81)]
    [InlineData("3.81m", 3.81)]
    [InlineData("38 mm", 0.038)]
    [InlineData("38 cm", 0.38)]
    [InlineData("12ft 6in", 3.81)]
    [InlineData("12' 6\"", 3.81)]
    [InlineData("12'6\"", 3.81)]
    [InlineData("12'-6\"", 3.81)]
    [InlineData("12′ 6″", 3.81)]
    [InlineData("12 ft 6 1/2 in", 3.8227)]
    [InlineData("12 FT 6.5 IN", 3.8227)]
    [InlineData("7 in", 0.1778)]
    [InlineData("1/2 in", 0.0127)]
    [InlineData("6 1/2\"", 0.1651)]
    [InlineData("12ft", 3.6576)]
    [InlineData("12.5 ft", 3.81)]
    [InlineData("-12ft 6in", -3.81)]
    [InlineData("-0.5", -0.5)]
    [InlineData("+.5", 0.5)]
    [InlineData("5e-1", 0.5)]
    public void Every_way_to_write_a_length_gives_its_metres(string text, double metres)
    {
        Parsed parsed = LengthText.Parse(text, LengthUnit.Metre);
        Assert.Null(parsed.Fault);
        Assert.Equal(metres, parsed.Value, 1e-12);
    }

    [Theory]
    [InlineData("m", 2.0)]
    [InlineData("cm", 0.02)]
    [InlineData("mm", 0.002)]
    [InlineData("ft", 0.6096)]
    [InlineData("in", 0.0508)]
    public void A_bare_number_is_in_the_unit_of_the_file(string unit, double metres) =>
        Assert.Equal(metres, LengthText.Parse("2", LengthUnits.FileWords[unit]).Value, 1e-12);

    [Theory]
    [InlineData("3,81", "decimal comma; write 3.81")]
    [InlineData("3,81 m", "decimal comma; write 3.81 m")]
    [InlineData("nan", "not a finite number")]
    [InlineData(".NaN", "not a finite number")]
    [InlineData("-.inf", "not a finite number")]
    [InlineData("Infinity", "not a finite number")]
    [InlineData("1e400", "too large to be a finite number")]
    [InlineData("1e400 m", "too large to be a finite number")]
    [InlineData("12ft 6", "no unit after its last number")]
    [InlineData("12ft 13in", "12 inches or more")]
    [InlineData("12.5ft 6in", "fraction of a foot")]
    [InlineData("6 1/0 in", "divides by zero")]
    [InlineData("3 furlongs", "unit 'furlongs'")]
    [InlineData("wide", "not a length")]
    [InlineData("", "not a length")]
    [InlineData("1.2.3", "not a length")]
    [InlineData("1_000", "not a length")]
    [InlineData("12:30", "not a length")]
    [InlineData("٣ m", "not a length")]
    public void What_is_no_length_says_why(string text, string why) =>
        Assert.Contains(why, LengthText.Parse(text, LengthUnit.Metre).Fault, StringComparison.Ordinal);

    [Fact]
    public void The_machines_language_changes_nothing()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo german = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            german.NumberFormat.NumberDecimalSeparator = ",";
            german.NumberFormat.NumberGroupSeparator = ".";
            CultureInfo.CurrentCulture = german;
            Assert.Equal(2.4, LengthText.Parse("2.4", LengthUnit.Metre).Value);
            Assert.Equal("0.5 m to 20 m", new QuantityRange(0.5, 20, "m").ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact, Law]
    public void A_number_of_millimetres_reads_the_same_in_every_metric_unit() =>
        Gen.Int[0, 99_999].ForAll(mm =>
        {
            double metres = mm / 1000.0;
            Assert.Equal(metres, LengthText.Parse($"{mm} mm", LengthUnit.Foot).Value, 1e-9);
            Assert.Equal(metres, LengthText.Parse(FormattableString.Invariant($"{metres:0.000} m"), LengthUnit.Foot).Value, 1e-9);
            Assert.Equal(metres, LengthText.Parse(FormattableString.Invariant($"{mm / 10.0:0.0}cm"), LengthUnit.Foot).Value, 1e-9);
        });

    [Fact, Law]
    public void Any_text_whatever_gives_a_finite_length_or_a_fault() =>
        Gen.String.ForAll(text =>
        {
            Parsed parsed = LengthText.Parse(text, LengthUnit.Metre);
            Assert.True(parsed.Fault is not null || double.IsFinite(parsed.Value));
        });
}
