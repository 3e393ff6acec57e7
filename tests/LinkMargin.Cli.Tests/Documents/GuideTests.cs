using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.RegularExpressions;
using LinkMargin.Cli.Guide;
using LinkMargin.Cli.Invoking;
using LinkMargin.Files.Edits;
using LinkMargin.Files.Json;
using LinkMargin.Files.Writing;

namespace LinkMargin.Cli.Tests.Documents;

/// <summary>The tables of the guide, checked against the program: options of each command, exit codes, keys of each JSON document.</summary>
public sealed partial class GuideTests
{
    private static readonly string RootHelp = CommandRun.Of("--help").Output;

    private static readonly string[] OfEveryCommand = [.. OptionsListedIn(RootHelp).Except(["--version"])];

    private static readonly ProjectDocument CommandsTopic = ProjectDocument.Guide("commands"), JsonTopic = ProjectDocument.Guide("json");

    private static readonly Dictionary<string, Type> RecordsByHeading = HeadingsOfRecords();

    public static TheoryData<string> Commands =>
        [.. CommandLine().Matches(RootHelp.Split("Commands:")[1]).Select(match => match.Groups[1].Value)];

    public static TheoryData<string> JsonHeadings => [.. RecordsByHeading.Keys];

    [Theory]
    [MemberData(nameof(Commands))]
    public void The_guide_lists_a_commands_own_options_and_no_others(string command)
    {
        string heading = CommandsTopic.Lines.Single(line => CommandHeading().Match(line).Groups[1].Value == command);
        string[] section = CommandsTopic.Section(heading);
        string[] own = [.. OptionsListedIn(CommandRun.Of(command, "--help").Output).Except(OfEveryCommand).Order(StringComparer.Ordinal)];
        Assert.Equal(own, OptionsIn(string.Join('\n', section)).Order(StringComparer.Ordinal));
        Assert.Contains(CommandsTopic.Section("# Commands"), line => line.StartsWith($"| `{command}` |", StringComparison.Ordinal));
    }

    [Fact]
    public void The_guide_explains_the_options_that_every_command_has()
    {
        Assert.Contains("--json", OfEveryCommand);
        Assert.Equal(OfEveryCommand.Order(StringComparer.Ordinal), FirstOptions("## Options of every command"));
    }

    [Fact]
    public void The_guide_explains_each_option_that_a_command_also_takes()
    {
        string[] shared = FirstOptions("## Options of several commands");
        string[] alsoTaken = [.. AlsoTakes().Matches(CommandsTopic.Text).SelectMany(match => OptionsIn(match.Value)).Distinct().Order(StringComparer.Ordinal)];
        Assert.Equal(shared, alsoTaken);
    }

    [Fact]
    public void The_guide_lists_the_exit_codes()
    {
        int[] codes = [.. typeof(ExitCodes).GetFields(BindingFlags.Public | BindingFlags.Static).Where(field => field.FieldType == typeof(int)).Select(field => (int)field.GetValue(null)!).Order()];
        Assert.Equal(codes, CommandsTopic.Section("## Exit codes").Select(line => ExitCodeRow().Match(line)).Where(row => row.Success).Select(row => int.Parse(row.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture)));
    }

    [Fact]
    public void The_guide_lists_every_edit() =>
        Assert.Equal(EditText.Forms.Order(StringComparer.Ordinal), TableKeys(CommandsTopic.Section("## What-if edits")).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(JsonHeadings))]
    public void The_guide_lists_the_keys_of_a_JSON_document_and_no_others(string heading) =>
        Assert.Equal(KeysOf(RecordsByHeading[heading]).Order(StringComparer.Ordinal), TableKeys(JsonTopic.Section(heading)).Order(StringComparer.Ordinal));

    [Fact]
    public void The_guide_lists_every_form()
    {
        string[] listed = [.. TableKeys(JsonTopic.Section("# JSON, CSV and GeoJSON"))];
        Assert.Equal(JsonText.Forms.Values.Order(StringComparer.Ordinal), listed.Order(StringComparer.Ordinal));
    }

    /// <summary>The tables are made from the types; this looks at what is printed.</summary>
    [Theory]
    [InlineData("fit cottage.yaml --where-next --model direct", "fit-next", "measurements", "Next measurement")]
    [InlineData("compare cottage.yaml --model direct", "compare", "ranking", "Rank")]
    [InlineData("place cottage.yaml --model direct --grid 1", "place", "places", "Place")]
    [InlineData("materials drywall-stud", "materials", "materials", "Material")]
    public void What_is_printed_has_keys_that_the_guide_lists(string command, string form, string list, string row)
    {
        using ScratchFolder folder = new();
        folder.Put("cottage.yaml", SampleFile.Modest);
        JsonElement root = CommandRun.In(folder.Path, [.. command.Split(' '), "--json"]).Json;
        Assert.Equal($"linkmargin/{form}/1", root.GetProperty("form").GetString());
        Assert.Empty(root.EnumerateObject().Select(key => key.Name).Except(["form", .. TableKeys(JsonTopic.Section($"## linkmargin/{form}/1"))]));
        Assert.Empty(root.GetProperty(list)[0].EnumerateObject().Select(key => key.Name).Except(TableKeys(JsonTopic.Section($"### {row}"))));
    }

    [Fact]
    public void The_guide_names_the_columns_of_a_CSV_of_a_map() =>
        Assert.Equal(FieldCsv.Headings, Code().Matches(string.Join('\n', JsonTopic.Section("## CSV of a map"))).Select(code => code.Groups[1].Value).Where(code => !code.Contains(' ', StringComparison.Ordinal)));

    private static string[] FirstOptions(string heading) =>
        [.. CommandsTopic.Section(heading).Where(line => line.StartsWith("| `--", StringComparison.Ordinal)).Select(line => OptionsIn(line).First()).Order(StringComparer.Ordinal)];

    private static Dictionary<string, Type> HeadingsOfRecords()
    {
        Dictionary<string, Type> records = [];
        foreach (Type document in JsonText.Forms.Keys)
        {
            AddRecord(document);
        }

        return records;

        void AddRecord(Type record)
        {
            string heading = JsonText.Forms.TryGetValue(record, out string? form) ? $"## {form}" : $"### {WordsOf(record)}";
            if (records.TryAdd(heading, record))
            {
                foreach (Type inner in PropertiesOf(record).SelectMany(property => TypesIn(property.PropertyType)).Where(type => type.Assembly == record.Assembly))
                {
                    AddRecord(inner);
                }
            }
            else
            {
                Assert.Equal(record, records[heading]);
            }
        }
    }

    private static IEnumerable<Type> TypesIn(Type type) => [type, .. type.GetGenericArguments().SelectMany(TypesIn)];

    // 'FitMeasurementDocument' stands under 'Fit measurement'.
    private static string WordsOf(Type record) =>
        InnerCapital().Replace(record.Name[..^"Document".Length], match => " " + match.Value.ToLowerInvariant());

    private static IEnumerable<PropertyInfo> PropertiesOf(Type record) =>
        record.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.GetMethod is not null && property.Name != "EqualityContract");

    private static IEnumerable<string> KeysOf(Type record) => PropertiesOf(record).Select(property =>
        property.GetCustomAttribute<JsonPropertyNameAttribute>()?.Name ?? JsonNamingPolicy.CamelCase.ConvertName(property.Name));

    private static IEnumerable<string> TableKeys(IEnumerable<string> section) => section
        .Where(line => line.StartsWith("| `", StringComparison.Ordinal))
        .SelectMany(line => Code().Matches(MarkdownBlock.CellsOf(line)[0]).Select(code => code.Groups[1].Value));

    private static IEnumerable<string> OptionsListedIn(string help) => ListedOption().Matches(help).Select(match => match.Groups[1].Value);

    private static IEnumerable<string> OptionsIn(string text) => OptionWord().Matches(text).Select(match => match.Value).Distinct();

    [GeneratedRegex("(?<![a-z-])--[a-z]+(-[a-z]+)*")]
    private static partial Regex OptionWord();

    [GeneratedRegex("^  (?:-.+, )?(--[a-z]+(?:-[a-z]+)*)", RegexOptions.Multiline)]
    private static partial Regex ListedOption();

    [GeneratedRegex("^### ([a-z]+)( [A-Z]+)*$")]
    private static partial Regex CommandHeading();

    [GeneratedRegex("^  ([a-z]+)\\b", RegexOptions.Multiline)]
    private static partial Regex CommandLine();

    [GeneratedRegex("Also\\s+takes[^.]*\\.")]
    private static partial Regex AlsoTakes();

    [GeneratedRegex("^\\| ([0-9]+) \\|")]
    private static partial Regex ExitCodeRow();

    [GeneratedRegex("(?<=.)[A-Z]")]
    private static partial Regex InnerCapital();

    [GeneratedRegex("`([^`]+)`")]
    private static partial Regex Code();
}
