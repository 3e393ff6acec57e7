using System.Text.Json;
using LinkMargin.Cli.Invoking;
using LinkMargin.Files.Tables;

namespace LinkMargin.Cli.Tests.Commands;

public sealed class MaterialsCommandTests
{
    private static readonly MaterialTables Tables = MaterialTablesFile.ReadBuiltIn().Tables!;

    [Fact]
    public void Every_row_of_every_table_is_listed_with_its_source()
    {
        CommandRun run = CommandRun.Of("materials", "--all");

        Assert.Equal(0, run.ExitCode);
        Assert.Empty(run.Error);
        foreach ((string name, string source) in Tables.Materials.Values.Select(m => (m.Name, m.Source))
            .Concat(Tables.BuildUps.Values.Select(f => (f.Name, f.Source)))
            .Concat(Tables.Radios.Values.Select(r => (r.Name, r.Source))))
        {
            Assert.Contains(run.Output.Split('\n'), line => line.StartsWith(name + " ", StringComparison.Ordinal));
            Assert.Contains(source, run.OutputUnwrapped, StringComparison.Ordinal);
        }

        Assert.All(run.Output.Split('\n'), line => Assert.InRange(line.Length, 0, Invocation.PlainWidth));
    }

    [Fact]
    public void The_json_holds_the_same_figures_as_the_tables()
    {
        JsonElement root = CommandRun.Of("materials", "--json").Json;

        Assert.Equal(
            Tables.Materials.Values.Select(m => (m.Name, m.LossDb, m.SpreadDb, m.Source)),
            root.GetProperty("materials").EnumerateArray().Select(m => (
                m.GetProperty("name").GetString()!,
                m.GetProperty("lossDb").GetDouble(),
                m.GetProperty("spreadDb").GetDouble(),
                m.GetProperty("source").GetString()!)));
        Assert.Equal(
            Tables.BuildUps.Values.Select(f => (f.Name, f.ThicknessMetres, f.Layers.Count)),
            root.GetProperty("floors").EnumerateArray().Select(f => (
                f.GetProperty("name").GetString()!,
                f.GetProperty("thicknessM").GetDouble(),
                f.GetProperty("layers").GetArrayLength())));
        Assert.Equal(
            Tables.Radios.Values.Select(r => (r.Name, r.TransmitPower.Dbm, r.Sensitivity.Dbm)),
            root.GetProperty("radios").EnumerateArray().Select(r => (
                r.GetProperty("name").GetString()!,
                r.GetProperty("transmitDbm").GetDouble(),
                r.GetProperty("sensitivityDbm").GetDouble())));
        Assert.Equal(Tables.Margins.Count, root.GetProperty("margins").GetArrayLength());
    }

    [Theory]
    [InlineData("drywall-stud", "material drywall-stud")]
    [InlineData("timber-joist-225", "floor timber-joist-225")]
    [InlineData("controller-typical", "radio controller-typical")]
    public void One_row_is_shown_in_full_with_its_source(string name, string title)
    {
        CommandRun run = CommandRun.Of("materials", name);

        Assert.Equal(0, run.ExitCode);
        Assert.StartsWith(title + "\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("  source    ", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_model_leaves_out_is_reported_in_text_and_json()
    {
        JsonElement model = CommandRun.Of("materials", "--json").Json.GetProperty("spreads")[0];
        Assert.Equal(("model", 4.0), (model.GetProperty("name").GetString(), model.GetProperty("spreadDb").GetDouble()));
        Assert.Contains("Spreads (one standard deviation), apart from the spread of each row; spreads.yaml (built in)", CommandRun.Of("materials", "--all").OutputUnwrapped, StringComparison.Ordinal);
    }

    [Fact]
    public void Alone_it_gives_each_kind_with_its_rows_by_name_and_how_to_see_more()
    {
        CommandRun run = CommandRun.Of("materials");

        Assert.Equal(0, run.ExitCode);
        Assert.InRange(run.Output.Split('\n').Length, 20, 75);
        foreach (RowKind kind in RowKind.Of(Tables))
        {
            Assert.Contains($"{kind.Name} {kind.Count} {string.Join(", ", kind.Names)}".TrimEnd(), run.OutputUnwrapped, StringComparison.Ordinal);
        }

        Assert.Equal(
            Tables.Materials.Count + Tables.BuildUps.Count + Tables.Radios.Count + Tables.Margins.Count + Tables.SpreadRows.Count,
            RowKind.Of(Tables).Sum(kind => kind.Count));
        Assert.Contains("--all lists everything", run.OutputUnwrapped, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("doors", "door-hollow", "brick-102")]
    [InlineData("floors", "beam-and-block", "door-hollow")]
    [InlineData("radios", "headset", "door-hollow")]
    public void A_kind_lists_its_rows_and_no_others(string kind, string inside, string outside)
    {
        CommandRun run = CommandRun.Of("materials", kind);

        Assert.Equal(0, run.ExitCode);
        Assert.Contains(run.Output.Split('\n'), line => line.StartsWith(inside + " ", StringComparison.Ordinal));
        Assert.DoesNotContain(run.Output.Split('\n'), line => line.StartsWith(outside + " ", StringComparison.Ordinal));
    }

    [Fact]
    public void A_word_of_the_trade_lists_the_rows_that_answer_to_it_in_text_and_json()
    {
        CommandRun run = CommandRun.Of("materials", "siding");

        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        Assert.StartsWith("No row is named 'siding'. ", run.Output, StringComparison.Ordinal);
        Assert.StartsWith("timber-frame ", run.Output.Split('\n')[4], StringComparison.Ordinal);
        Assert.Contains("timber-frame", CommandRun.Of("materials", "siding", "--json").Json.GetProperty("materials").EnumerateArray().Select(m => m.GetProperty("name").GetString()));
    }

    [Fact]
    public void A_word_that_nothing_answers_to_is_refused()
    {
        Assert.Equal((2, ""), (CommandRun.Of("materials", "nonsense").ExitCode, CommandRun.Of("materials", "nonsense").Output));
        Assert.Contains("--all lists every row; omit 'glass' or --all", CommandRun.Of("materials", "glass", "--all").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void One_row_as_json_leaves_the_other_rows_out()
    {
        JsonElement root = CommandRun.Of("materials", "drywall-stud", "--json").Json;

        Assert.Equal("drywall-stud", Assert.Single(root.GetProperty("materials").EnumerateArray()).GetProperty("name").GetString());
        Assert.Empty(root.GetProperty("radios").EnumerateArray());
    }

    [Fact]
    public void A_mistyped_row_gets_the_nearest_one()
    {
        CommandRun run = CommandRun.Of("materials", "drywal-stud");

        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Equal("linkmargin: the tables have no row 'drywal-stud'; did you mean 'drywall-stud'?\n", run.Error);
    }

    [Fact]
    public void A_folder_of_tables_that_is_not_there_is_said_to_be_missing()
    {
        CommandRun run = CommandRun.Of("materials", "--materials", "no such folder");

        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Contains("no such folder", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
    }
}
