using LinkMargin.Engine.Houses;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Tables;

public sealed class SpreadTableTests
{
    private const string Rows = """
        spreads:
          - {name: model, what: w, spread: 3.5 dB, source: s}
          - {name: crossing, what: w, share: 0.19, source: s}
          - {name: measurement, what: w, spread: 2, source: s}
          - {name: bad-measurement, what: w, share: 0.1, spread: 15 dB, source: s}
          - {name: device, what: w, level: 6 dBm, spread: 9 dB, source: s}

        """;

    [Fact]
    public void Each_row_gives_the_figures_that_belong_to_it()
    {
        using TableFolder folder = new();
        folder.Write("spreads.yaml", Rows);
        Assert.Equal(new Spreads(3.5, 0.19, 2, 0.1, 15, 6, 9), folder.Read().Tables!.Spreads);
    }

    [Fact]
    public void Names_of_older_tables_are_still_read()
    {
        using TableFolder folder = new();
        folder.Write("spreads.yaml", Rows.Replace("measurement", "reading", StringComparison.Ordinal));
        Assert.Equal(new Spreads(3.5, 0.19, 2, 0.1, 15, 6, 9), folder.Read().Tables!.Spreads);
    }

    [Fact]
    public void The_built_in_rows_all_name_a_source() =>
        Assert.All(MaterialTablesFile.ReadBuiltIn().Tables!.SpreadRows, row => Assert.NotEmpty(row.Source));

    [Fact]
    public void What_is_common_and_what_each_crossing_has_make_up_the_whole_spread()
    {
        Spreads spreads = new(4, 0.19, 3, 0.05, 20, 10, 12);
        Assert.Equal(1.8, spreads.InCommonDb(2), 1e-12);
        Assert.Equal(2, double.Hypot(spreads.InCommonDb(2), spreads.EachCrossingDb(2)), 1e-12);
    }

    [Fact]
    public void Mistakes_are_reported_all_at_once_with_their_places()
    {
        using TableFolder folder = new();
        folder.Write("spreads.yaml", """
            spreads:
              - {name: model, what: w, spread: 3 dB, share: 0.5, source: s}
              - {name: crossing, what: w, share: 0.95, source: s}
              - {name: measuremen, what: w, spread: 3 dB, source: s}
              - {name: bad-measurement, what: w, spread: 0 dB, source: s}

            """);
        Assert.Equal(
            [
                "spreads.yaml:2:3: spreads: these rows are missing: measurement, device; copy them from the built-in file, then change them",
                "spreads.yaml:2:49: share: the row 'model' has no such figure; remove it",
                "spreads.yaml:3:38: share: '0.95' is outside the allowed 0 to 0.9",
                "spreads.yaml:4:12: name: 'measuremen' is not a known spread; did you mean 'measurement'?",
                "spreads.yaml:5:5: the row 'bad-measurement' needs the key 'share'",
                "spreads.yaml:5:46: spread: '0 dB' is outside the allowed 0.1 dB to 60 dB",
            ],
            folder.Problems().Where(p => p.StartsWith("spreads", StringComparison.Ordinal)));
        Assert.Null(folder.Read().Tables);
    }

    [Fact]
    public void All_depths_of_a_row_are_of_one_stuff()
    {
        Material timber = new("timber", 2.7, 1, "invented") { ThicknessMetres = 0.1, Form = LossForm.Bulk };
        Material joist = MaterialScaling.AtDepth(timber, 0.225);
        Assert.Equal(("timber", "timber"), (timber.TableRow, joist.TableRow));
        Assert.Equal(2.25, joist.Scale, 1e-12);
        Assert.Equal(joist.LossDb, joist.Scale * timber.LossDb, 1e-12);
    }
}
