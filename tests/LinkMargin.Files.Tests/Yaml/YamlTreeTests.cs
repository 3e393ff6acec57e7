using System.Text;
using CsCheck;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tests.Yaml;

public sealed class YamlTreeTests
{
    [Fact]
    public void Every_value_knows_its_place()
    {
        (MappingNode? root, _) = Parse("a: 1\nb:\n  - {c: two}\n");
        MappingEntry b = root!.Entries[1];
        Assert.Equal(new Mark(2, 1), b.KeyMark);
        MappingNode item = Assert.IsType<MappingNode>(Assert.IsType<SequenceNode>(b.Value).Items[0]);
        Assert.Equal(new Mark(3, 9), item.Entries[0].Value.Mark);
    }

    [Theory]
    [InlineData("\uFEFFa: 1\r\nb: 2\r\n")]
    [InlineData("# first\n---\na: 1\nb: 2\n...\n")]
    public void Line_ends_of_any_kind_and_a_byte_order_mark_are_fine(string text)
    {
        List<Problem> problems = [];
        Source source = new("f", problems);
        string? decoded = YamlText.Decode(Encoding.UTF8.GetBytes(text), source);
        MappingNode? root = YamlTree.ParseMapping(decoded!, source);
        Assert.Empty(problems);
        Assert.Equal(["a", "b"], root!.Entries.Select(e => e.Key));
        Assert.Equal("2", Assert.IsType<ScalarNode>(root.Entries[1].Value).Text);
    }

    [Fact]
    public void A_key_written_twice_is_reported_with_both_places_and_measurement_goes_on()
    {
        (MappingNode? root, List<Problem> problems) = Parse("a: 1\nb: 2\na: 3\n");
        Problem problem = Assert.Single(problems);
        Assert.Equal("f:3:1: the key 'a' appears twice; the first is in line 1, so remove one", problem.ToString());
        Assert.Equal(2, root!.Entries.Count);
    }

    [Theory]
    [InlineData("", 1, 1, "empty")]
    [InlineData("   \n# only a comment\n", 1, 1, "empty")]
    [InlineData("just words", 1, 1, "keys with values are needed")]
    [InlineData("- a\n- b", 1, 1, "holds a list")]
    [InlineData("a: 1\n\tb: 2", 2, 1, "tab")]
    [InlineData("a:\n\t- 2", 2, 1, "tab")]
    [InlineData("a: 'open", 1, 4, "quote")]
    [InlineData("a: [1, 2\nb: 3", 2, 1, "a bracket opened")]
    [InlineData("a: {b: 1\nc: 3", 2, 1, "a bracket opened")]
    [InlineData("a: [1, 2\n", 2, 1, "square brackets")]
    [InlineData("a: {b: 1\n", 2, 1, "curly brackets")]
    [InlineData("a:\n  b: 1\n c: 2", 3, 2, "does not line up")]
    [InlineData("- a\nb: 1", 2, 1, "line up with the '-'")]
    [InlineData("a: b: c", 1, 5, "second ': '")]
    [InlineData("a: 1\n  b: 2", 2, 4, "second ': '")]
    [InlineData("a: 1\nb", 2, 1, "not followed by ': '")]
    [InlineData("a: @x", 1, 4, "cannot begin a value")]
    [InlineData("a: \"\\q\"", 1, 4, "backslash")]
    [InlineData("a: &x 1\nb: *x", 1, 4, "anchors and aliases")]
    [InlineData("b: *x", 1, 4, "anchors and aliases")]
    [InlineData("a: !thing 1", 1, 4, "tags")]
    [InlineData("a: 1\n---\nb: 2", 2, 1, "second document")]
    [InlineData("[a, b]: 1", 1, 1, "where a key is needed")]
    [InlineData("\0\u0001", 1, 1, "not UTF-8")]
    public void What_cannot_be_read_gets_one_sentence_with_its_place(string text, int line, int column, string part)
    {
        List<Problem> problems = [];
        Source source = new("f", problems);
        if (YamlText.Decode(Encoding.UTF8.GetBytes(text), source) is { } decoded)
        {
            YamlTree.ParseMapping(decoded, source);
        }

        Problem problem = Assert.Single(problems);
        Assert.Contains(part, problem.Message, StringComparison.Ordinal);
        Assert.False(problem.Message.EndsWith('.'));
        Assert.Equal(new Mark(line, column), problem.Mark);
    }

    [Fact]
    public void Aliases_that_would_explode_are_refused_at_the_first_anchor()
    {
        StringBuilder text = new("a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
        for (int i = 1; i < 12; i++)
        {
            text.Append(FormattableString.Invariant($"a{i}: &a{i} [{string.Join(", ", Enumerable.Repeat($"*a{i - 1}", 10))}]\n"));
        }

        (MappingNode? root, List<Problem> problems) = Parse(text.ToString());
        Assert.Null(root);
        Assert.Equal(new Mark(1, 5), Assert.Single(problems).Mark);
    }

    [Fact]
    public void Nesting_is_allowed_to_the_limit_and_refused_beyond_it()
    {
        static string Nested(int depth) => $"a: {new string('[', depth)}{new string(']', depth)}";
        Assert.Empty(Parse(Nested(YamlLimits.Depth - 1)).Problems);
        Assert.Contains("more than 32 deep", Assert.Single(Parse(Nested(YamlLimits.Depth)).Problems).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{")]
    [InlineData("- ")]
    [InlineData("? ")]
    [InlineData("a: [")]
    [InlineData("{a: ")]
    [InlineData("\"")]
    [InlineData("'")]
    [InlineData("&a ")]
    [InlineData("!a ")]
    [InlineData("%a ")]
    [InlineData("#")]
    [InlineData(" ")]
    [InlineData("\n")]
    [InlineData("|\n")]
    [InlineData("a\n")]
    [InlineData("a ")]
    [InlineData("a: b ")]
    [InlineData("---\n")]
    [InlineData(", ")]
    [InlineData("]")]
    [InlineData(":")]
    [InlineData("\t")]
    [InlineData("x")]
    public void A_file_full_of_one_thing_ends_in_a_message(string piece)
    {
        string text = string.Concat(Enumerable.Repeat(piece, 200_000 / piece.Length));
        Assert.Single(Parse(text).Problems);
    }

    [Fact]
    public void Values_are_allowed_to_the_limit_and_refused_beyond_it()
    {
        static string Many(int count) => $"a: [{string.Join(",", Enumerable.Repeat("1", count))}]";
        const int Others = 3; // the group, the key and the list
        Assert.Empty(Parse(Many(YamlLimits.Nodes - Others)).Problems);
        Assert.Contains("more than the allowed 200000 values", Assert.Single(Parse(Many(YamlLimits.Nodes - Others + 1)).Problems).Message, StringComparison.Ordinal);
    }

    /// <summary>Pieces that mean something to a YAML parser, thrown together.</summary>
    [Fact, Law]
    public void Any_text_whatever_gives_a_tree_or_one_last_sentence()
    {
        string[] pieces =
        [
            "a", "b: ", ": ", "- ", "? ", "[", "]", "{", "}", ", ", "\n", "\n  ", "\n    ", "\t", "'", "\"", "\\", "\\x4", "\\U00110000",
            "|", ">-", "|2", "&a ", "*a ", "!t ", "!<", "%YAML 1.2\n", "%TAG ! x\n", "%YAML 99999999999.1\n", "---\n", "...\n", "#", " ", "~", "\u2028", "\ud800", "1e400",
        ];
        Gen.Int[0, pieces.Length - 1].Array[0, 24].Select(picks => string.Concat(picks.Select(pick => pieces[pick]))).ForAll(
            text =>
            {
                (MappingNode? root, List<Problem> problems) = Parse(text);
                Assert.True(root is not null || problems.Count > 0);
                Assert.All(problems, p => Assert.True(p.Mark.Line >= 1 && p.Mark.Column >= 1 && !p.Message.EndsWith('.')));
            },
            cases: 20_000);
    }

    internal static (MappingNode? Root, List<Problem> Problems) Parse(string text)
    {
        List<Problem> problems = [];
        return (YamlTree.ParseMapping(text, new Source("f", problems)), problems);
    }
}
