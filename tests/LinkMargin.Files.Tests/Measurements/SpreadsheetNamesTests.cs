using System.Text;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Measurements;
using LinkMargin.Files.Writing;

namespace LinkMargin.Files.Tests.Measurements;

/// <summary>Names in files of separated values: no spreadsheet runs one, and each comes back as it was.</summary>
public sealed class SpreadsheetNamesTests
{
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+den", "'+den")]
    [InlineData("-den", "'-den")]
    [InlineData("@den", "'@den")]
    [InlineData("\tden", "'\tden")]
    [InlineData("\rden", "'\rden")]
    [InlineData("'=den", "''=den")]
    [InlineData("''den", "''den")]
    [InlineData("'den'", "'den'")]
    [InlineData("den = here", "den = here")]
    [InlineData("", "")]
    public void A_name_is_written_as_text_and_read_as_the_name(string name, string cell)
    {
        Assert.Equal(cell, SpreadsheetText.Written(name));
        Assert.Equal(name, SpreadsheetText.Read(cell));
    }

    [Theory]
    [InlineData("=cmd|' /C calc'!A0")]
    [InlineData("@sofa, left")]
    [InlineData("-1 \"den\"")]
    [InlineData("'=1")]
    public void A_template_filled_in_is_read_back(string name)
    {
        House house = SmallHouse.House with { Spots = [SmallHouse.House.Spots[0] with { Name = name }] };
        using MemoryStream stream = new();
        MeasurementsTemplate.Write(house, stream);
        string template = Encoding.UTF8.GetString(stream.ToArray());
        Assert.DoesNotContain(template.Split('\n'), line => line.TrimStart('"').StartsWith(name, StringComparison.Ordinal));

        string filled = template.Replace(",,phone", ",-60,phone", StringComparison.Ordinal);
        MeasurementsParseResult read = MeasurementsFile.Parse(filled, "r.csv", house, LengthUnit.Metre);
        Assert.DoesNotContain(read.Problems, p => p.Message.Contains("neither a spot nor a seat", StringComparison.Ordinal));
        Assert.Equal(2, read.Measurements!.Count);
        Assert.All(read.Measurements, r => Assert.Equal(name, r.Transmitter.Name));
    }

    [Fact]
    public void A_device_that_turns_text_around_or_looks_like_another_is_reported()
    {
        const string Head = "transmitter,receiver,received,device\n";
        Assert.Contains(SmallHouse.Problems(Head + "shelf,sofa,-52,ph\u202eone\n"), p => p.StartsWith("r.csv:2:1: device: 'ph<U+202E>one' holds U+202E", StringComparison.Ordinal));
        Assert.Contains(
            SmallHouse.Problems(Head + "shelf,sofa,-52,phone\nshelf,desk,-60,phone\u200b\n"),
            p => p.Contains("differs from a device above only by invisible characters", StringComparison.Ordinal));
        Assert.DoesNotContain(
            SmallHouse.Problems(Head + "shelf,sofa,-52,t\u00e9l\nshelf,desk,-60,te\u0301l\n"), p => p.Contains("invisible", StringComparison.Ordinal));
        Assert.Single(SmallHouse.Read(Head + "shelf,sofa,-52,t\u00e9l\nshelf,desk,-60,te\u0301l\n").Measurements!.Select(r => r.Devices).Distinct());
    }
}
