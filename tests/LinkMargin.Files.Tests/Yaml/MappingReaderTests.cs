using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tests.Yaml;

public sealed class MappingReaderTests
{
    private static readonly string[] Keys = ["name", "width", "open", "parts", "kind", "inside"];
    private static readonly QuantityRange Width = new(0.1, 10, "m");
    private static readonly Dictionary<string, string> Kinds = new() { ["round"] = "o", ["square"] = "x" };

    private readonly List<Problem> problems = [];

    [Fact]
    public void What_is_right_is_read_without_a_word()
    {
        MappingReader reader = Open("{name: den, width: 12ft 6in, open: true, parts: [1, 2], kind: round, inside: {name: in}}");
        Assert.Equal("den", reader.RequiredName("name"));
        Assert.Equal(3.81, reader.RequiredLength("width", Width)!.Value, 1e-12);
        Assert.True(reader.OptionalFlag("open"));
        Assert.Equal(2, reader.RequiredItems("parts").Count);
        Assert.Equal("o", reader.RequiredChoice("kind", Kinds, "a kind"));
        Assert.Equal("in", reader.OptionalGroup("inside", "the inside", ["name"])!.RequiredText("name"));
        Assert.Empty(problems);
    }

    [Fact]
    public void All_faults_are_reported_at_once_each_at_its_place()
    {
        MappingReader reader = Open("nmae: den\nwidth: -3\nopen: yes\nparts: 7\nkind: squar\ninside:\n");
        reader.RequiredName("name");
        reader.RequiredLength("width", Width);
        reader.OptionalFlag("open");
        reader.RequiredItems("parts");
        reader.RequiredChoice("kind", Kinds, "a kind");
        reader.OptionalGroup("inside", "the inside", ["name"]);
        Assert.Equal(
            [
                "f:1:1: 'nmae' is not a key of a part; did you mean 'name'?",
                "f:1:1: a part needs the key 'name'",
                "f:2:8: width: '-3' (-3 m) is outside the allowed 0.1 m to 10 m",
                "f:3:7: open: write true or false, not 'yes'",
                "f:4:8: parts: a list is needed (items that begin with '- ', or [ ... ]), not '7'",
                "f:5:7: kind: 'squar' is not a kind; did you mean 'square'?",
                "f:6:1: 'inside' of a part has no value; write one or remove the key",
            ],
            problems.Select(p => p.ToString()));
    }

    [Fact]
    public void An_unknown_key_that_is_near_none_gets_the_list_of_keys()
    {
        Open("colour-of-paint: red");
        Assert.Equal(
            "'colour-of-paint' is not a key of a part; write one of: name, width, open, parts, kind, inside",
            Assert.Single(problems).Message);
    }

    [Theory]
    [InlineData("width: nan", "width: 'nan' is not a finite number (0.1 m to 10 m is allowed)")]
    [InlineData("width: 1e400", "width: '1e400' is too large to be a finite number (0.1 m to 10 m is allowed)")]
    [InlineData("width: 99 m", "width: '99 m' is outside the allowed 0.1 m to 10 m")]
    [InlineData("width: 40 ft", "width: '40 ft' (12.192 m) is outside the allowed 0.1 m to 10 m")]
    [InlineData("width: [1, 2]", "width: a length is needed, 0.1 m to 10 m, not a list")]
    [InlineData("width: {a: 1}", "width: a length is needed, 0.1 m to 10 m, not a group of keys")]
    [InlineData("width: 2,5", "width: '2,5' has a decimal comma; write 2.5 (0.1 m to 10 m is allowed)")]
    public void A_wrong_length_tells_value_range_and_remedy(string text, string message)
    {
        Assert.Null(Open(text).RequiredLength("width", Width));
        Assert.Equal(message, Assert.Single(problems).Message);
    }

    [Fact]
    public void A_name_is_one_short_line()
    {
        Assert.Null(Open("name: " + new string('n', 61)).RequiredName("name"));
        Assert.Null(Open("name: \"a\\nb\"").RequiredName("name"));
        Assert.Equal(2, problems.Count);
        Assert.NotNull(Open("name: " + new string('n', 60)).RequiredName("name"));
        Assert.Equal(2, problems.Count);
    }

    [Fact]
    public void Asking_for_a_key_that_nobody_may_write_is_our_own_slip() =>
        Assert.Throws<ArgumentException>(() => Open("name: x").Has("nothing"));

    private MappingReader Open(string text)
    {
        Source source = new("f", problems);
        return new MappingReader(source, YamlTree.ParseMapping(text, source)!, "a part", Keys);
    }
}
