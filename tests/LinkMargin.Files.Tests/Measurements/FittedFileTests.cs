using CsCheck;
using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Measurements;

namespace LinkMargin.Files.Tests.Measurements;

public sealed class FittedFileTests
{
    private const string Good = """
        fitted: Two rooms
        readings: 12
        materials:
          - {name: board, table: 3 dB, shift: 1.25 dB, table-spread: 0.9 dB, spread: 0.5 dB}
          - {name: brick, table: 7 dB, shift: -2 dB, table-spread: 1.8 dB, spread: 1.1 dB}
        devices:
          - {name: phone, offset: 4.5 dBm, spread: 1.2 dB, readings: 12}
        correlations:
          - {between: [board, brick], value: -0.4}

        """;

    [Fact, Law]
    public void What_is_written_is_read_again() =>
        Gen.Select(
            Gen.Double[0, 20].Array[2], Gen.Double[-1, 3].Array[2], Gen.Double[0, 9].Array[4], Gen.Double[-0.99, 0.99],
            Gen.Double[-40, 40], Gen.String[Gen.Char["ab \"'\\#:{}[],ä\u4e16-"], 1, 30]).ForAll((losses, shifts, spreads, correlation, offset, name) =>
        {
            FittedLosses written = new(
                SmallHouse.House.Name,
                17,
                [.. Enumerable.Range(0, 2).Select(i => new FittedMaterial(i == 0 ? "board" : "brick", losses[i], spreads[i], Math.Max(-losses[i], shifts[i]), spreads[i + 2]))],
                [new FittedDevice($"x{name}x", offset, 2.5, 17)],
                (_, _) => correlation);
            FittedParseResult result = FittedFile.Parse(FittedFile.Text(written), "f.yaml", SmallHouse.House);
            FittedLosses read = result.Fitted!;
            Assert.Equal((written.HouseName, 17), (read.HouseName, read.MeasurementCount));
            for (int i = 0; i < 2; i++)
            {
                FittedMaterial a = written.Materials[i], b = read.Materials[i];
                Assert.Equal(a.Name, b.Name);
                Assert.Equal(a.TableLossDb, b.TableLossDb, 1e-4);
                Assert.Equal(a.ShiftDb, b.ShiftDb, 1e-4);
                Assert.Equal(a.TableSpreadDb, b.TableSpreadDb, 1e-4);
                Assert.Equal(a.SpreadDb, b.SpreadDb, 1e-4);
            }

            Assert.Equal(($"x{name}x", 17), (read.Devices[0].Name, read.Devices[0].MeasurementCount));
            Assert.Equal(offset, read.Devices[0].OffsetDbm, 1e-4);
            Assert.Equal(correlation, read.Correlation(0, 1), 1e-4);
            Assert.Equal(read.Correlation(0, 1), read.Correlation(1, 0));
        });

    [Theory]
    [InlineData(0.0004, 0.0004)]
    [InlineData(-0.00006, -0.0001)]
    [InlineData(0.00004, 0)]
    public void Small_correlations_are_kept_to_four_decimals(double fitted, double read)
    {
        FittedLosses written = new(
            SmallHouse.House.Name, 2, [new FittedMaterial("board", 3, 1, 0, 1), new FittedMaterial("brick", 7, 1, 0, 1)], [new FittedDevice("x", 0, 2.5, 2)], (_, _) => fitted);
        Assert.Equal(read, FittedFile.Parse(FittedFile.Text(written), "f.yaml", SmallHouse.House).Fitted!.Correlation(0, 1), 1e-12);
    }

    [Fact]
    public void A_file_of_ones_own_making_is_known_again()
    {
        using MemoryStream file = new(System.Text.Encoding.UTF8.GetBytes(FittedFile.Text(new FittedLosses("h", 0, [], [], (_, _) => 0))));
        Assert.Equal(Files.Writing.Author.Program, Files.Writing.GeneratorMark.AuthorOf(file));
    }

    [Fact]
    public void A_file_without_faults_has_no_problems() => Assert.Empty(FittedFile.Parse(Good, "f.yaml", SmallHouse.House).Problems);

    [Fact]
    public void All_walls_floors_and_leaves_of_a_row_are_shifted_and_nothing_else()
    {
        FittedLosses fitted = FittedFile.Parse(Good, "f.yaml", SmallHouse.House).Fitted!;
        House before = SmallHouse.House, after = fitted.ApplyTo(before);
        Assert.All(before.Levels.Zip(after.Levels), pair => Assert.All(pair.First.Walls.Zip(pair.Second.Walls), walls =>
        {
            double shift = walls.First.Material.Name == "board" ? 1.25 : -2;
            Assert.Equal(walls.First.Material.LossDb + shift, walls.Second.Material.LossDb, 1e-12);
            Assert.Equal(walls.First.Material.SpreadDb, walls.Second.Material.SpreadDb);
            Assert.Equal(shift > 0 ? 0.5 : 1.1, walls.Second.Material.FittedSpreadDb!.Value, 1e-12);
        }));
        IReadOnlyList<FloorLayer> floor = after.Levels[0].Above!.BuildUp.Layers;
        Assert.Equal(4.25, floor[0].Material!.LossDb, 1e-12);
        Assert.Equal(4, floor[1].Joists!.Material.LossDb);
        Assert.Null(floor[1].Joists!.Material.FittedSpreadDb);
        Assert.Equal(before.Seats, after.Seats);
        Assert.Equal(HouseFabric.Of(before).Count, HouseFabric.Of(after).Count);
    }

    [Theory]
    [InlineData("fitted: Two rooms", "fitted: Another", "f.yaml:1:9: fitted: these losses were fitted for 'Another', but the house is 'Two rooms'; check that it is the same house")]
    [InlineData("table: 3 dB", "table: 3.5 dB", "f.yaml:4:26: table: the table loss of 'board' was 3.5 dB when this was fitted and is 3 dB now; the shift is added to the present table loss, so fit again")]
    public void What_looks_odd_is_reported_and_read(string good, string odd, string problem)
    {
        FittedParseResult result = FittedFile.Parse(Good.Replace(good, odd, StringComparison.Ordinal), "f.yaml", SmallHouse.House);
        Assert.Equal(problem, Assert.Single(result.Problems).ToString());
        Assert.NotNull(result.Fitted);
    }

    [Theory]
    [InlineData("shift: -2 dB", "shift: -8 dB", "f.yaml:5:39: shift: -8 dB would make the loss of 'brick', 7 dB in the table, negative; -7 dB is the lowest allowed shift")]
    [InlineData("readings: 12\nm", "m", "f.yaml:1:1: a fitted file needs the key 'measurements'")]
    [InlineData("name: brick", "name: board", "f.yaml:5:12: name: 'board' appears twice; the first is in line 4, so rename or remove one")]
    [InlineData("[board, brick]", "[board, brik]", "f.yaml:9:23: between: 'brik' is not a fitted material of this file; did you mean 'brick'?")]
    [InlineData("[board, brick]", "[board]", "f.yaml:9:15: between: write the names of two materials, [a, b]")]
    [InlineData("value: -0.4", "value: -1.4", "f.yaml:9:38: value: '-1.4' is outside the allowed -1 to 1")]
    [InlineData("shift: 1.25 dB", "shift: NaN", "f.yaml:4:39: shift: 'NaN' is not a finite number (-80 dB to 300 dB is allowed)")]
    [InlineData("offset: 4.5 dBm", "offset: 4.5 dB", "f.yaml:7:27: offset: '4.5 dB' has the unit 'dB', but this is a level in dBm; write -90 or -90 dBm (-200 dBm to 200 dBm is allowed)")]
    [InlineData("devices:", "device:", "f.yaml:6:1: 'device' is not a key of a fitted file; did you mean 'devices'?")]
    public void What_is_wrong_is_refused_with_its_place(string good, string wrong, string problem)
    {
        FittedParseResult result = FittedFile.Parse(Good.Replace(good, wrong, StringComparison.Ordinal), "f.yaml", SmallHouse.House);
        Assert.Contains(problem, result.Problems.Select(p => p.ToString()));
        Assert.Null(result.Fitted);
    }

    [Fact]
    public void A_file_of_another_house_altogether_is_refused() =>
        Assert.Contains(
            "f.yaml:4:3: materials: the house contains none of these; name the file that was fitted for this house",
            FittedFile.Parse(
                Good.Replace("board", "felt", StringComparison.Ordinal).Replace("brick", "straw", StringComparison.Ordinal), "f.yaml", SmallHouse.House)
                .Problems.Select(p => p.ToString()));

    [Fact]
    public void Correlations_that_cannot_hold_together_are_refused()
    {
        FittedMaterial[] materials = [.. ((string[])["board", "brick", "leaf"]).Select(n => new FittedMaterial(n, n == "board" ? 3 : 7, 1, 0, 1))];
        FittedLosses impossible = new("Two rooms", 3, materials, [], (_, _) => -0.9);
        Assert.Contains(
            "correlations: these values contradict each other; write the file again with 'linkmargin fit'",
            FittedFile.Parse(FittedFile.Text(impossible), "f.yaml", SmallHouse.House).Problems.Select(p => p.Message));
    }

    [Theory]
    [InlineData("")]
    [InlineData("- a\n- b\n")]
    [InlineData("materials: [{{{{\n")]
    public void What_is_no_fitted_file_is_reported_in_a_sentence(string text)
    {
        FittedParseResult result = FittedFile.Parse(text, "f.yaml", SmallHouse.House);
        Assert.NotEmpty(result.Problems);
        Assert.Null(result.Fitted);
    }
}
