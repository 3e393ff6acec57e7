using LinkMargin.Files.Measurements;

namespace LinkMargin.Files.Tests.Measurements;

/// <summary>What is wrong or odd in a file of readings, and what is said of it.</summary>
public sealed class MeasurementsFaultTests
{
    private const string Heading = "transmitter,receiver,received,device\n";
    private const string Good = "shelf,sofa,-50,phone\nshelf,desk,-60,phone\n";
    private const string Placed = "transmitter,receiver level,receiver x,receiver y,receiver height,received\nshelf,down,1,1,1,-50\n";

    [Theory]
    [InlineData("shelf,soffa,-50,phone", 7, "receiver: 'soffa' is neither a spot nor a seat of 'Two rooms'; did you mean 'sofa'?")]
    [InlineData("shelf,sofa,50,phone", 12, "received: '50' is higher than any device in a house receives; write the level in dBm, not in bars or per cent; -130 dBm to 0 dBm is allowed; did you mean -50 dBm?")]
    [InlineData("shelf,sofa,-150,phone", 12, "received: '-150' (-150 dBm) is outside the allowed -130 dBm to 0 dBm")]
    [InlineData("shelf,sofa,-50 mW,phone", 12, "received: '-50 mW' has the unit 'mW', but this is a level in dBm; write -90 or -90 dBm (-130 dBm to 0 dBm is allowed)")]
    [InlineData("shelf,sofa,three bars,phone", 12, "received: 'three bars' is neither a level nor 'not heard'; write, for example, -63 dBm, not heard, or < -92 dBm")]
    [InlineData("shelf,sofa,NaN,phone", 12, "received: 'NaN' is neither a level nor 'not heard'; write, for example, -63 dBm, not heard, or < -92 dBm")]
    [InlineData("shelf,sofa,-1e400,phone", 12, "received: '-1e400' is too large to be a finite number (-130 dBm to 0 dBm is allowed)")]
    [InlineData("shelf,sofa,< high,phone", 12, "received: 'high' is neither a level nor 'not heard'; write, for example, -63 dBm, not heard, or < -92 dBm")]
    [InlineData("shelf,sofa,-50,", 1, "device: this line does not say what measured the level; write any name, the same for all measurements of one device")]
    [InlineData(",sofa,-50,phone", 1, "transmitter: this line does not say where the transmitter was; write the name of a spot or seat")]
    [InlineData("shelf,sofa,-50,5,phone", 18, "this line has 5 fields, but there are 4 headings; a decimal comma looks like the comma between fields, so write decimal points, or separate the fields with semicolons")]
    [InlineData("shelf,shelf,-50,phone", 13, "'shelf' and 'shelf' are at the same place, so there is no link between them; fix one of the two")]
    [InlineData("shelf,\"sofa,-50,phone", 7, "a quote opened here is not closed on this line: '\"sofa,-50,phone'; close it, or remove the quotes")]
    public void A_line_that_cannot_be_read_is_refused_with_its_place(string line, int column, string message)
    {
        Assert.Contains($"r.csv:4:{column}: {message}", SmallHouse.Problems(Heading + Good + line + "\n"));
        Assert.Null(SmallHouse.Read(Heading + Good + line + "\n").Measurements);
    }

    [Theory]
    [InlineData("shelf,down,9,1,1,-50", 12, "receiver: x 9 m, y 1 m lies outside the level 'down', which reaches x from 0 to 7 m, y from 0 to 5 m; fix the coordinates or the level, or give their unit in the heading")]
    [InlineData("shelf,down,1,1,2.6,-50", 16, "receiver height: 2.6 m is above the ceiling of the level 'down'; 0 m to 2.4 m is allowed")]
    [InlineData("shelf,dwon,1,1,1,-50", 7, "receiver level: no level is named 'dwon'; did you mean 'down'?")]
    [InlineData("shelf,,1,1,1,-50", 1, "receiver level: coordinates need the name of their level; write one of: down, up")]
    [InlineData("shelf,down,1,,1,-50", 1, "receiver y: this line gives the other coordinates but not this one; write it, for example 1.2 m")]
    [InlineData("shelf,down,1 furlong,1,1,-50", 12, "receiver x: '1 furlong' has the unit 'furlong', which is not a unit of length; write m, cm, mm, ft or in (-1000 m to 1000 m is allowed)")]
    [InlineData("shelf,down,1e400,1,1,-50", 12, "receiver x: '1e400' is too large to be a finite number (-1000 m to 1000 m is allowed)")]
    public void A_place_that_cannot_be_is_refused_with_its_place(string line, int column, string message) =>
        Assert.Contains($"r.csv:3:{column}: {message}", SmallHouse.Problems(Placed + line + "\n"));

    [Theory]
    [InlineData("receiver,received,device\n", "r.csv:1:1: nothing says where the transmitter was; add the column 'transmitter' for the name of a spot or seat, or 'transmitter x', 'transmitter y', 'transmitter height' and 'transmitter level'")]
    [InlineData("transmitter,receiver,device\n", "r.csv:1:1: the column 'received' is missing, so there are no levels; name the column that holds them 'received'")]
    [InlineData("transmitter,receiver,received,received,device\n", "r.csv:1:31: the heading 'received' appears twice; remove one of the two columns")]
    [InlineData("transmitter,receiver x (miles),receiver y,received,device\n", "r.csv:1:13: receiver x: 'miles' is not a unit of this column; write m, cm, mm, ft or in")]
    [InlineData("transmitter,receiver,received (mW),device\n", "r.csv:1:22: received: 'mW' is not a unit of this column; only dBm is read")]
    [InlineData("from,to,strength\nshelf,sofa,-50\n", "r.csv:1:1: the first line must name the columns, and none of 'from,to,strength' is one; put this line above: transmitter,receiver,received,device")]
    [InlineData("", "r.csv:1:1: this file holds no lines; 'linkmargin fit HOUSE --template FILE' writes one to fill in")]
    [InlineData("transmitter,receiver,received,device\n", "r.csv:1:1: this file holds no measurement; write a level, or 'not heard', under 'received'")]
    public void Headings_that_will_not_do_are_refused(string text, string problem)
    {
        Assert.Contains(problem, SmallHouse.Problems(text));
        Assert.Null(SmallHouse.Read(text).Measurements);
    }

    [Theory]
    [InlineData("transmitter,receiver,received,device,notes\nshelf,sofa,-50,phone,by the door\nshelf,desk,-60,phone,\n", "r.csv:1:38: 'notes' is not a known column, so it is ignored")]
    [InlineData("transmitter,receiver,received,devise\nshelf,sofa,-50,phone\nshelf,desk,-60,phone\n", "r.csv:1:31: 'devise' is not a known column, so it is ignored; did you mean 'device'?")]
    [InlineData("transmitter,receiver,received\nshelf,sofa,-50\nshelf,desk,-60\n", "r.csv:1:1: there is no column 'device', so all levels are assumed to come from the same device")]
    [InlineData("transmitter,receiver,received,device\nshelf,sofa,-50,phone\nshelf,desk,-60,phone\nrack,desk,-70,phnoe\n", "r.csv:4:1: 'phnoe' has only this one measurement, which sets its own offset and says almost nothing about the house; did you mean 'phone'?")]
    [InlineData("transmitter,receiver,received,device\nshelf,sofa,-50,phone\nshelf,desk,-60,phone\nrack,desk,< -55,phone\n", "r.csv:4:11: this line says that phone hears nothing below -55 dBm, but another line has -60 dBm from it; check both")]
    public void What_looks_odd_is_reported_and_read(string text, string problem)
    {
        Assert.Contains(problem, SmallHouse.Problems(text));
        Assert.NotNull(SmallHouse.Read(text).Measurements);
    }

    [Fact]
    public void A_device_that_hears_nothing_at_all_must_say_what_it_could_have_heard() =>
        Assert.Equal(
            "r.csv:2:12: received: phone heard nothing at all in this file, so its sensitivity is unknown; write the level below which it hears nothing, such as < -92 dBm",
            SmallHouse.Problems(Heading + "shelf,sofa,not heard,phone\nshelf,desk,not heard,phone\n")[0]);

    [Fact]
    public void Outside_all_rooms_but_not_outside_the_house_is_odd()
    {
        // Between the rooms and the far corner of the walls there is nothing here, so a house with a gap is needed.
        var gapped = SmallHouse.House with
        {
            Levels = [SmallHouse.House.Levels[0] with { Rooms = [SmallHouse.House.Levels[0].Rooms[0]] }],
            Seats = [SmallHouse.House.Seats[0]],
            Spots = [SmallHouse.House.Spots[0]],
        };
        MeasurementsParseResult read = MeasurementsFile.Parse(
            "transmitter,receiver x,receiver y,received,device\nshelf,6,1,-50,phone\nshelf,1,2,-50,phone\n", "r.csv", gapped, default);
        Assert.Equal("r.csv:2:7: receiver: this is in no room of the level 'down'; check the coordinates", Assert.Single(read.Problems).ToString());
        Assert.Equal(2, read.Measurements!.Count);
    }

    [Fact]
    public void All_faults_are_reported_at_once_in_order()
    {
        string[] problems = SmallHouse.Problems(Heading + "shelf,soffa,50,\nrck,sofa,-50,phone\n");
        Assert.Equal(["r.csv:2:1", "r.csv:2:7", "r.csv:2:13", "r.csv:3:1"], problems.Select(p => string.Join(':', p.Split(':').Take(3))));
    }

    [Theory]
    [InlineData(500, false)]
    [InlineData(20_001, true)]
    public void More_lines_than_are_read_are_refused(int lines, bool refused) =>
        Assert.Equal(
            refused,
            SmallHouse.Problems(Heading + string.Concat(Enumerable.Repeat("shelf,sofa,-50,phone\n", lines)))
                .Contains("r.csv:20002:1: this file has 20001 lines, more than the allowed 20000; remove some"));

    [Fact]
    public void A_file_that_is_no_text_a_folder_or_not_there_is_reported()
    {
        string[] Read(string path) => [.. MeasurementsFile.Read(path, SmallHouse.House, default).Problems.Select(p => p.Message)];
        string folder = Directory.CreateTempSubdirectory().FullName, file = Path.Combine(folder, "r.csv");
        try
        {
            File.WriteAllBytes(file, [0xFF, 0xFE, 0x74, 0]);
            Assert.Equal("this file is in UTF-16; save it as UTF-8", Assert.Single(Read(file)));
            File.WriteAllBytes(file, new byte[(4 * 1024 * 1024) + 1]);
            Assert.Equal("this file is larger than 4 MB; a measurements file usually has a few kilobytes", Assert.Single(Read(file)));
            Assert.Equal("this is a folder; name a file in it", Assert.Single(Read(folder)));
            Assert.Equal("there is no such file; check the name and the folder", Assert.Single(Read(file + "x")));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
