using System.Text.Json;
using LinkMargin.Files.Resources;

namespace LinkMargin.Cli.Tests.Commands;

public sealed class NewCommandTests : IDisposable
{
    private readonly ScratchFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void The_starter_house_and_its_schema_are_written_and_the_house_is_sound()
    {
        CommandRun run = Run("new", "mine.yaml");

        Assert.Equal(0, run.ExitCode);
        Assert.Equal(["house.schema.json", "mine.yaml"], folder.Files);
        Assert.Equal(StarterHouse.Text, File.ReadAllText(folder.PathOf("mine.yaml")));
        JsonElement check = Run("check", "mine.yaml", "--json").Json;
        Assert.Equal(0, check.GetProperty("errors").GetInt32());
        Assert.Equal(0, check.GetProperty("warnings").GetInt32());
        Assert.Equal(0, Run("compare", "mine.yaml").ExitCode);
    }

    [Fact]
    public void The_json_names_both_files()
    {
        Directory.CreateDirectory(folder.PathOf("in"));

        JsonElement root = Run("new", "in/mine.yaml", "--json").Json;

        Assert.Equal("in/mine.yaml", root.GetProperty("houseFile").GetString());
        Assert.Equal(Path.Combine("in", "house.schema.json"), root.GetProperty("schema").GetString());
    }

    [Fact]
    public void A_house_that_somebody_has_changed_is_left_alone_unless_forced()
    {
        Run("new", "mine.yaml");
        File.AppendAllText(folder.PathOf("mine.yaml"), "# my own remark\n");

        CommandRun refused = Run("new", "mine.yaml");

        Assert.Equal(2, refused.ExitCode);
        Assert.Empty(refused.Output);
        Assert.Contains("--force", refused.Error, StringComparison.Ordinal);
        Assert.Contains("# my own remark", File.ReadAllText(folder.PathOf("mine.yaml")), StringComparison.Ordinal);
        Assert.Equal(0, Run("new", "mine.yaml", "--force").ExitCode);
        Assert.Equal(StarterHouse.Text, File.ReadAllText(folder.PathOf("mine.yaml")));
    }

    [Theory]
    [InlineData("no/such/folder/mine.yaml")]
    [InlineData(".")]
    public void A_place_where_no_file_can_be_gets_one_sentence(string file)
    {
        CommandRun run = Run("new", file);

        Assert.Equal(2, run.ExitCode);
        Assert.Single(run.Error.TrimEnd().Split('\n'));
        Assert.DoesNotContain("unexpected", run.Error, StringComparison.Ordinal);
        Assert.Empty(folder.Files);
    }

    private CommandRun Run(params string[] words) => CommandRun.In(folder.Path, words);
}
