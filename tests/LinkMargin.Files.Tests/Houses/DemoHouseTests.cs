using LinkMargin.Files.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tests.Houses;

public sealed class DemoHouseTests
{
    [Fact]
    public void The_text_is_sound_yaml()
    {
        List<Problem> problems = [];
        Assert.NotNull(YamlTree.ParseMapping(DemoHouse.Text, new Source("demo.yaml", problems)));
        Assert.Empty(problems);
    }

    [Fact]
    public void The_lines_fit_a_terminal_and_a_printed_page() =>
        Assert.All(DemoHouse.Text.Split('\n'), line => Assert.InRange(line.Length, 0, 130));
}
