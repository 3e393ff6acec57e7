using LinkMargin.Cli.Guide;

namespace LinkMargin.Cli.Tests.Commands;

public sealed class GuideCommandTests
{
    public static TheoryData<string> Topics => [.. GuideTopic.All.Select(topic => topic.Name)];

    [Theory]
    [MemberData(nameof(Topics))]
    public void A_topic_prints_within_the_width(string topic)
    {
        foreach (int width in new[] { 80, 100, 140 })
        {
            CommandRun run = CommandRun.In(Environment.CurrentDirectory, width, "guide", topic);
            Assert.Equal(0, run.ExitCode);
            Assert.Empty(run.Error);
            string[] lines = run.Output.Split('\n');
            Assert.True(lines.Length > 10, $"'{topic}' has {lines.Length} lines.");
            Assert.All(lines, line => Assert.InRange(line.Length, 0, width));
        }
    }

    [Theory]
    [MemberData(nameof(Topics))]
    public void A_topic_shows_no_marks_of_Markdown(string topic)
    {
        string text = CommandRun.Of("guide", topic).Output;
        Assert.All(["](", "**", "<!--", "|--", "```"], mark => Assert.DoesNotContain(mark, text, StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_topic_each_stands_on_a_line_of_its_own()
    {
        CommandRun run = CommandRun.Of("guide");
        Assert.Equal(0, run.ExitCode);
        string[] lines = run.Output.Split('\n');
        Assert.All(GuideTopic.All, topic =>
            Assert.Single(lines, line => line.StartsWith(topic.Name + " ", StringComparison.Ordinal) && line.EndsWith(topic.About, StringComparison.Ordinal)));
    }

    [Fact]
    public void The_help_names_every_topic()
    {
        string help = CommandRun.Of("guide", "--help").OutputUnwrapped;
        Assert.All(GuideTopic.All, topic => Assert.Contains(topic.Name, help, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_file_of_the_guide_is_a_topic()
    {
        string[] files = [.. typeof(GuideTopic).Assembly.GetManifestResourceNames().Where(name => name.StartsWith("guide/", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];
        Assert.Equal(files, GuideTopic.All.Select(topic => $"guide/{topic.Name}.md").Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_wrong_topic_gets_the_nearest_word()
    {
        CommandRun run = CommandRun.Of("guide", "buget");
        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Equal("linkmargin: the guide has no topic 'buget'; did you mean 'budget'?\n", run.Error);
        Assert.Contains("write one of: house-file, ", CommandRun.Of("guide", "cooking").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void As_JSON_a_topic_has_its_Markdown()
    {
        Assert.Equal(GuideTopic.All.Count, CommandRun.Of("guide", "--json").Json.GetProperty("topics").GetArrayLength());
        Assert.Equal(GuideTopic.All[0].Markdown(), CommandRun.Of("guide", GuideTopic.All[0].Name, "--json").Json.GetProperty("topics")[0].GetProperty("markdown").GetString());
    }
}
