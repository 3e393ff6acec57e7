using LinkMargin.Cli.Invoking;
using LinkMargin.Files.Resources;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Cli.Tests.Output;

/// <summary>Text keeps within its width on the demo house and on one whose every name is as long as a name may be.</summary>
public sealed class LineWidthTests : IDisposable
{
    private const int Wide = 120;
    private const int LongestName = 60;

    private static readonly int[] NarrowerWidths = [60, 80, 100];

    // A name of words, and one that no blank breaks.
    private static readonly string Rack = Long("the rack in the corner"), Shelf = Long("shelf", '-');
    private static readonly string Sofa = Long("sofa", '-'), Desk = Long("the desk below the window");
    private static readonly string Den = Long("den", '-'), Loft = Long("the loft above all of it");

    private static readonly string LongNames = $$$"""
        house: {{{Long("a house of long names")}}}
        levels:
          - name: {{{Den}}}
            height: 2.4
            outer: brick-215
            inner: drywall-stud
            rooms:
              - {name: {{{Long("games den")}}}, corner: [0, 0], size: [4, 5]}
              - {name: {{{Long("passage", '-')}}}, corner: [4, 0], size: [4, 5]}
            above: {build-up: timber-joist-225, joists: {run: x}}
          - name: {{{Loft}}}
            height: 2.3
            outer: brick-215
            inner: drywall-stud
            rooms:
              - {name: {{{Long("studio")}}}, corner: [0, 0], size: [8, 5]}
        fixtures:
          - {name: {{{Long("steel cupboard")}}}, level: {{{Den}}}, box: [0.2, 0.2, 0.8, 0.8], to: 2, material: sheet-steel, open: [front]}
        spots:
          - {name: {{{Rack}}}, inside: {{{Long("steel cupboard")}}}, height: 1.1}
          - {name: {{{Shelf}}}, level: {{{Loft}}}, at: [7, 4, 1.5]}
          - {name: {{{Long("third")}}}, level: {{{Loft}}}, at: [2, 4, 1.5]}
          - {name: {{{Long("fourth", '-')}}}, level: {{{Loft}}}, at: [4, 4, 1.5]}
          - {name: {{{Long("fifth")}}}, level: {{{Loft}}}, at: [5, 4, 1.5]}
        seats:
          - {name: {{{Sofa}}}, level: {{{Den}}}, at: [3, 2], required: 15 dB}
          - {name: {{{Desk}}}, level: {{{Loft}}}, at: [1.5, 1], facing: north, required: 60 dB, used: weekly}
        zones:
          - {name: {{{Long("ledge")}}}, level: {{{Loft}}}, corner: [0.5, 4.5], size: [3, 0.3], heights: [0.4, 1.4]}

        """;

    private static readonly string Measurements = $"""
        transmitter,receiver,received,device
        {Rack},{Sofa},-52,{Long("phone")}
        {Rack},{Desk},-68,{Long("phone")}
        {Shelf},{Sofa},-66,{Long("phone")}
        {Shelf},{Desk},not heard,{Long("tablet", '-')}

        """;

    private readonly ScratchFolder folder = new();

    public LineWidthTests()
    {
        folder.Put("demo.yaml", DemoHouse.Text);
        folder.Put("long.yaml", LongNames);
        folder.Put("readings.csv", Measurements);
        folder.Put("spoilt.yaml", LongNames.Replace("brick-215", "brick-of-a-kind", StringComparison.Ordinal).Replace("at: [3, 2]", "at: [33, 2]", StringComparison.Ordinal));
    }

    public static TheoryData<string> Commands =>
    [
        "check demo.yaml", "check long.yaml", "check spoilt.yaml", "compare spoilt.yaml",
        "compare demo.yaml --model direct", "compare long.yaml --occupied all",
        "compare demo.yaml --model direct --what-if 'close door den door'", "compare long.yaml --model direct --what-if 'remove fixture CUPBOARD'",
        "explain demo.yaml --spot 'larder shelf' --seat 'den sofa right' --all-paths", "explain long.yaml --spot RACK --seat DESK --all-paths",
        "explain long.yaml --spot RACK --seat SOFA --model direct", "map long.yaml --cell 1 --model direct", "map long.yaml --paths --spot RACK --seat DESK --model direct",
        "place demo.yaml --model direct --grid 0.5 --level den", "place long.yaml --model direct",
        "improve demo.yaml --model direct --spot 'lounge cabinet'", "improve long.yaml --model direct",
        "fit long.yaml readings.csv", "fit long.yaml --template blank.csv", "fit long.yaml --where-next --model direct",
        "materials", "materials --all", "materials siding", "materials doors", "materials brick-102", "materials timber-joist-225", "materials console-typical", "new new.yaml",
        "explain long.yaml --spot nothing", "compare long.yaml --occupied nobody", "compare long.yaml --what-if 'open door sesame'", "nonsense",
        "--help", "check --help", "compare --help", "demo --help", "explain --help", "fit --help", "improve --help", "map --help",
        "materials --help", "new --help", "place --help",
    ];

    public void Dispose() => folder.Dispose();

    [Theory]
    [MemberData(nameof(Commands))]
    public void No_line_is_wider_than_80_columns_unless_the_terminal_is(string command)
    {
        CommandRun run = Run(80, command);
        Assert.All(LinesOf(run), line => Assert.True(WordWrap.WidthOf(line) <= 80, line));
        Assert.All(LinesOf(Run(60, command)), line => Assert.True(WordWrap.WidthOf(line) <= 60 || command.Contains("help", StringComparison.Ordinal), line));
    }

    [Theory]
    [InlineData("compare demo.yaml --model direct")]
    [InlineData("improve demo.yaml --model direct --spot 'lounge cabinet'")]
    [InlineData("explain long.yaml --spot RACK --seat DESK")]
    [InlineData("compare --help")]
    public void A_wide_terminal_is_used(string command)
    {
        int[] widths = [.. LinesOf(Run(Wide, command)).Select(WordWrap.WidthOf)];
        Assert.InRange(widths.Max(), 81, Wide);
    }

    /// <summary>Neither in a narrow table nor in a list is any of a table's figures lost; blocks repeat what each seat requires.</summary>
    [Theory]
    [InlineData("compare demo.yaml --model direct")]
    [InlineData("compare long.yaml --model direct")]
    public void Every_figure_stands_at_every_width(string command)
    {
        string[] wide = FiguresOf(Run(140, command));
        Assert.InRange(wide.Length, 25, int.MaxValue);
        Assert.All(NarrowerWidths, width => Assert.Equal(wide, FiguresOf(Run(width, command))));
    }

    [Theory]
    [InlineData(0, 80)]
    [InlineData(40, Terminal.LeastWidth)]
    [InlineData(81, 80)]
    [InlineData(121, 120)]
    [InlineData(400, Terminal.GreatestWidth)]
    public void The_width_is_that_of_the_window_and_80_where_there_is_none(int window, int width) =>
        Assert.Equal(width, Terminal.WidthIn(window));

    private CommandRun Run(int width, string command) => CommandRun.In(
        folder.Path,
        width,
        [
            .. CommandRun.WordsOf(command)
                .Select(word => word.Replace("RACK", Rack, StringComparison.Ordinal).Replace("DESK", Desk, StringComparison.Ordinal)
                    .Replace("SOFA", Sofa, StringComparison.Ordinal).Replace("CUPBOARD", Long("steel cupboard"), StringComparison.Ordinal)),
            .. command.Contains("help", StringComparison.Ordinal) || command == "nonsense" ? Array.Empty<string>() : ["--force"],
        ]);

    // The name of a file is not cut, so that it can be copied: it may stand alone on a line that is too long.
    private static IEnumerable<string> LinesOf(CommandRun run) =>
        (run.Output + run.ErrorAsWritten).Split('\n').Where(line => line.Trim().Contains(' ', StringComparison.Ordinal));

    private static string[] FiguresOf(CommandRun run) =>
        [.. run.Output.Split([' ', '\n']).Where(word => word.Contains('.', StringComparison.Ordinal) && word.All(c => char.IsAsciiDigit(c) || c is '.' or '-' or '+')).Distinct().Order(StringComparer.Ordinal)];

    private static string Long(string name, char between = ' ')
    {
        string text = string.Join(between, Enumerable.Repeat(name, LongestName))[..LongestName];
        return text.TrimEnd(between).Replace(' ', between);
    }
}
