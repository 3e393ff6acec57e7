using System.Reflection;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Resources;
using LinkMargin.Files.Tables;
using LinkMargin.Files.Tests.Quantities;

namespace LinkMargin.Files.Tests.Houses;

/// <summary>A house in feet is answered in feet, one in metres in metres, whatever is wrong with it.</summary>
public sealed class LengthsOfFeetTests
{
    [Fact]
    public void No_fault_of_a_house_in_feet_is_reported_in_metres_and_the_other_way_round()
    {
        int withLengths = 0;
        foreach (object[] row in Rows(nameof(HouseFaultTests.A_mistake_is_reported_at_its_place_with_the_value_and_the_remedy)))
        {
            string spoilt = Spoilt(row);
            string[] inMetres = Faults(spoilt), inFeet = Faults(FeetText.Of(spoilt));
            Assert.NotEmpty(inFeet);
            Assert.All(inFeet, fault => Assert.DoesNotMatch(LengthsIn.Metres, fault));
            Assert.All(inMetres.Where(fault => !fault.Contains("'7ft 10'", StringComparison.Ordinal)), fault => Assert.DoesNotMatch(LengthsIn.Feet, fault));
            withLengths += inFeet.Count(fault => LengthsIn.Feet.IsMatch(fault));
        }

        Assert.InRange(withLengths, 25, int.MaxValue);
    }

    [Theory]
    [InlineData("1e30")]
    [InlineData("-3")]
    [InlineData("wide")]
    [InlineData("0")]
    [InlineData("77")]
    public void The_starter_house_in_feet_with_any_value_spoilt_says_nothing_metric(string spoilt)
    {
        MaterialTables tables = MaterialTablesFile.ReadBuiltIn().Tables!;
        string text = FeetText.Of(StarterHouse.Text);
        for (int at = text.IndexOf(": ", StringComparison.Ordinal); at >= 0; at = text.IndexOf(": ", at + 1, StringComparison.Ordinal))
        {
            int end = text.IndexOfAny([',', '}', ']', '\n', '#'], at + 2);
            HouseParseResult parsed = HouseFile.Parse(text[..(at + 2)] + spoilt + text[end..], "house.yaml", tables);
            if (parsed.Unit == LengthUnit.Foot)
            {
                Assert.All(parsed.Problems, p => Assert.DoesNotMatch(LengthsIn.Metres, p.Message));
            }
        }
    }

    [Fact]
    public void A_ceiling_is_reported_in_the_unit_of_the_file() =>
        Assert.Equal(
            "house.yaml:38:36: at (height): 12ft is above the ceiling of the level 'high'; 0in to 7ft 6 9/16in is allowed",
            Faults(FeetText.Of(HouseText.Good).Replace("5.249343832021]", "12]", StringComparison.Ordinal))[0]);

    private static string[] Faults(string text) => [.. HouseText.Read(text).Problems.Select(p => p.ToString())];

    private static IEnumerable<object[]> Rows(string test) => typeof(HouseFaultTests).GetMethod(test)!
        .GetCustomAttributesData().Where(a => a.AttributeType == typeof(InlineDataAttribute))
        .Select(a => ((IReadOnlyCollection<CustomAttributeTypedArgument>)a.ConstructorArguments[0].Value!).Select(v => v.Value!).ToArray());

    private static string Spoilt(object[] row)
    {
        string text = HouseText.Good.Replace((string)row[0], (string)row[1], StringComparison.Ordinal);
        foreach (object[] pair in row.Skip(3).Chunk(2))
        {
            text = text.Replace((string)pair[0], (string)pair[1], StringComparison.Ordinal);
        }

        return text;
    }
}
