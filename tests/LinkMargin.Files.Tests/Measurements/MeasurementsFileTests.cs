using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Measurements;

namespace LinkMargin.Files.Tests.Measurements;

/// <summary>Files whose meaning is plain, however they were written.</summary>
public sealed class MeasurementsFileTests
{
    private const string Plain = "transmitter,receiver,received,device\nshelf,sofa,-52,phone\nshelf,desk,-61.5,phone\nrack,sofa,not heard,phone\n";

    [Fact]
    public void Each_line_is_a_level_between_two_named_places()
    {
        MeasurementsParseResult read = SmallHouse.Read(Plain);
        Assert.Empty(read.Problems);
        Assert.Equal([-52, -61.5, -61.5], read.Measurements!.Select(r => Math.Round(r.LevelDbm, 9)));
        Assert.Equal([true, true, false], read.Measurements!.Select(r => r.IsHeard));
        Measurement first = read.Measurements![0];
        Assert.Equal(("shelf", "sofa", "phone"), (first.Transmitter.Name, first.Receiver.Name, first.Devices));
        Assert.Equal(SmallHouse.House.PositionOf(SmallHouse.House.Spots[0]), first.Transmitter.PositionIn(SmallHouse.House));
        Assert.Equal(SmallHouse.House.PositionOf(SmallHouse.House.Seats[0]), first.Receiver.PositionIn(SmallHouse.House));
    }

    [Theory]
    [InlineData("\uFEFFtransmitter,receiver,received,device\nshelf,sofa,-52,phone\nshelf,desk,-61.5,phone\nrack,sofa,not heard,phone\n")]
    [InlineData("transmitter,receiver,received,device\r\nshelf,sofa,-52,phone\r\nshelf,desk,-61.5,phone\r\nrack,sofa,not heard,phone")]
    [InlineData("transmitter;receiver;received;device\nshelf;sofa;-52;phone\nshelf;desk;-61,5;phone\nrack;sofa;not heard;phone\n")]
    [InlineData("transmitter,receiver,received,device\rshelf,sofa,-52,phone\rshelf,desk,-61.5,phone\rrack,sofa,not heard,phone\r")]
    [InlineData("sep=;\ntransmitter;receiver;received;device\nshelf;sofa;-52;phone\nshelf;desk;-61,5;phone\nrack;sofa;not heard;phone\n")]
    [InlineData("transmitter\treceiver\treceived\tdevice\nshelf\tsofa\t-52\tphone\nshelf\tdesk\t-61,5\tphone\nrack\tsofa\tnot heard\tphone\n")]
    [InlineData("transmitter,receiver,received,device\nshelf,sofa,-52,phone\nshelf,desk,\"-61,5\",phone\nrack,sofa,\"not heard\",phone\n")]
    [InlineData("# mine\n\nTransmitter , Receiver,Received (dBm),DEVICE\nshelf , sofa,-52 dBm,phone\n\nShelf,Desk,\u221261.5 dBm,Phone\nrack,sofa,Not heard,PHONE\n,,,\n")]
    public void The_same_measurements_written_in_other_ways_are_the_same(string text)
    {
        MeasurementsParseResult read = SmallHouse.Read(text);
        Assert.Empty(read.Problems);
        Assert.Equal(
            SmallHouse.Read(Plain).Measurements!.Select(r => (r.Transmitter, r.Receiver, r.Devices, r.LevelDbm, r.IsHeard)),
            read.Measurements!.Select(r => (r.Transmitter, r.Receiver, r.Devices, r.LevelDbm, r.IsHeard)));
    }

    [Fact]
    public void Without_headings_the_order_of_the_template_is_taken_and_reported()
    {
        MeasurementsParseResult read = SmallHouse.Read(Plain[(Plain.IndexOf('\n', StringComparison.Ordinal) + 1)..]);
        Assert.Equal(3, read.Measurements!.Count);
        Assert.Equal(
            "r.csv:1:1: the line of headings is missing; the fields are assumed to be transmitter,receiver,received,device",
            Assert.Single(read.Problems).ToString());
    }

    [Fact]
    public void Ends_may_be_given_by_coordinates_in_any_unit()
    {
        const string metres = "transmitter,receiver level,receiver x,receiver y,receiver height,received,device\n"
            + "shelf,up,3.048,1.524,0.9144,-60,phone\nshelf,down,1.524,3.048,,-50,phone\n";
        const string feet = "transmitter,receiver level,receiver x (ft),receiver y [ft],receiver height ft,received,device\n"
            + "shelf,up,10,5,3,-60,phone\nshelf,down,5 ft,3.048 m,,-50,phone\n";
        IReadOnlyList<Measurement> a = SmallHouse.Read(metres).Measurements!, b = SmallHouse.Read(feet).Measurements!;
        foreach ((Measurement first, Measurement second) in a.Zip(b))
        {
            Assert.Equal(0, first.Receiver.PositionIn(SmallHouse.House).DistanceTo(second.Receiver.PositionIn(SmallHouse.House)), 1e-12);
        }

        Assert.Equal(0.7, a[1].Receiver.HeightMetres);
        Assert.Equal(a[0].Receiver.Plan, SmallHouse.Read(metres.Replace("3.048,1.524,0.9144", "10,5,3", StringComparison.Ordinal).Replace("1.524,3.048", "5,10", StringComparison.Ordinal), LengthUnit.Foot).Measurements![0].Receiver.Plan);
    }

    [Theory]
    [InlineData("12ft 6in")]
    [InlineData("12' 6\"")]
    [InlineData("\"12' 6\"\"\"")]
    [InlineData("381")]
    public void A_unit_in_a_field_counts_over_the_one_in_the_heading(string written) =>
        Assert.Equal(
            12.5 * 0.3048,
            SmallHouse.Read($"transmitter,receiver level,receiver x (cm),receiver y,received\nshelf,down,{written},1,-50\nshelf,down,1,1,-50\n").Measurements![0].Receiver.Plan.X,
            1e-12);

    [Fact]
    public void Repeated_measurements_are_averaged_as_powers()
    {
        Measurement measurement = Assert.Single(SmallHouse.Read("transmitter,receiver,received,device\nshelf,sofa,-50,phone\nshelf,sofa,-60,Phone\n").Measurements!);
        Assert.Equal(10 * Math.Log10((1e-5 + 1e-6) / 2), measurement.LevelDbm, 1e-9);
        Assert.Equal((2, "phone"), (measurement.SampleCount, measurement.Devices));
        Assert.Equal([2, 3], measurement.Lines);
    }

    [Fact]
    public void A_thousand_equal_lines_count_as_one_measurement()
    {
        MeasurementsParseResult read = SmallHouse.Read(
            "transmitter,receiver,received,device\n" + string.Concat(Enumerable.Repeat("shelf,sofa,-50,phone\n", 1000)) + "shelf,desk,-60,phone\n");
        Assert.Equal([(-50.0, 1), (-60.0, 1)], read.Measurements!.Select(r => (Math.Round(r.LevelDbm, 9), r.SampleCount)));
        Assert.Equal(
            "r.csv:2:12: 1000 lines from here on have the same level for the same link with phone; they count as one measurement, because fading would make independent measurements differ",
            Assert.Single(read.Problems).ToString());
    }

    [Theory]
    [InlineData("not heard", -61)]
    [InlineData("not heard < -92", -92)]
    [InlineData("not heard below -92 dBm", -92)]
    [InlineData("< -92 dBm", -92)]
    public void What_is_not_heard_is_a_bound(string written, double bound)
    {
        Measurement silent = SmallHouse.Read($"transmitter,receiver,received,device\nshelf,sofa,-50,phone\nshelf,desk,-61,phone\nrack,sofa,{written},phone\n").Measurements![2];
        Assert.Equal((false, bound), (silent.IsHeard, silent.LevelDbm));
    }

    [Fact]
    public void The_bound_may_have_a_column_of_its_own()
    {
        IReadOnlyList<Measurement> measurements = SmallHouse.Read(
            "transmitter,receiver,received,device,not heard below (dBm)\nshelf,sofa,-50,phone,\nrack,sofa,not heard,phone,-95\n").Measurements!;
        Assert.Equal((false, -95.0), (measurements[1].IsHeard, measurements[1].LevelDbm));
    }

    [Fact]
    public void What_sends_and_what_receives_make_a_pair()
    {
        IReadOnlyList<Measurement> measurements = SmallHouse.Read(
            "sender,transmitter,receiver,received,device\nrouter,shelf,sofa,-50,phone\nbeacon,shelf,sofa,-60,phone\nrouter,shelf,desk,-70,phone\nbeacon,rack,desk,-70,phone\n").Measurements!;
        Assert.Equal(["router to phone", "beacon to phone", "router to phone", "beacon to phone"], measurements.Select(r => r.Devices));
    }

    [Fact]
    public void The_template_is_read_once_it_is_filled_in()
    {
        using MemoryStream stream = new();
        MeasurementsTemplate.Write(SmallHouse.House, stream);
        string text = System.Text.Encoding.UTF8.GetString(stream.ToArray());
        Assert.StartsWith("transmitter,receiver,received,device\nshelf,sofa,,phone\n", text, StringComparison.Ordinal);
        Assert.Equal("r.csv:1:1: 4 lines have no level yet and are ignored", SmallHouse.Problems(text)[0]);
        Assert.Null(SmallHouse.Read(text).Measurements);
        MeasurementsParseResult filled = SmallHouse.Read(text.Replace(",,", ",-60,", StringComparison.Ordinal));
        Assert.Empty(filled.Problems);
        Assert.Equal(4, filled.Measurements!.Count);
    }

    [Fact]
    public void The_same_is_read_where_a_comma_parts_decimals()
    {
        System.Globalization.CultureInfo before = System.Globalization.CultureInfo.CurrentCulture;
        System.Globalization.CultureInfo german = (System.Globalization.CultureInfo)System.Globalization.CultureInfo.InvariantCulture.Clone();
        german.NumberFormat.NumberDecimalSeparator = ",";
        german.NumberFormat.NumberGroupSeparator = ".";
        try
        {
            System.Globalization.CultureInfo.CurrentCulture = german;
            Assert.Equal(-61.5, SmallHouse.Read(Plain).Measurements![1].LevelDbm, 1e-9);
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentCulture = before;
        }
    }
}
