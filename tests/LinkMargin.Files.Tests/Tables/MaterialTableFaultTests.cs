using System.Globalization;
using System.Text;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tests.Tables;

public sealed class MaterialTableFaultTests : IDisposable
{
    private const string Rest = "what: w, loss: 1 dB, spread: 1 dB, source: from memory";

    private readonly TableFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Are_reported_at_once_each_at_its_place() =>
        Assert.Equal(
            [
                "materials.yaml:2:5: a material needs the key 'source'",
                "materials.yaml:3:5: 'sorce' is not a key of a material; did you mean 'source'?",
                "materials.yaml:5:11: loss: '-1 dB' is outside the allowed 0 dB to 80 dB",
                "materials.yaml:9:11: name: 'a' appears twice; the first is in line 2, so rename or remove one",
                "materials.yaml:14:14: of: 'bb' is not a row of this table; write one of: a, c, air",
            ],
            FaultsOf("""
                materials:
                  - name: a
                    sorce: from memory
                    what: w
                    loss: -1 dB
                    spread: 1 dB
                  - what: the same word
                    source: s
                    name: a
                    loss: 1
                    spread: 1
                  - name: c
                    layers:
                      - {of: bb, thickness: 1 mm}
                    what: w
                    loss: 1
                    spread: 1
                    source: s
                """));

    [Theory]
    [InlineData("name: a, what: w, loss: 1 dB, spread: 1 dB", "2:5: a material needs the key 'source'")]
    [InlineData("what: w, loss: 1 dB, spread: 1 dB, source: s", "2:5: a material needs the key 'name'")]
    [InlineData("name: a, loss: 1 dB, spread: 1 dB, source: s", "2:5: a material needs the key 'what'")]
    [InlineData("name: a, what: w, loss: -0.1 dB, spread: 1 dB, source: s", "loss: '-0.1 dB' is outside the allowed 0 dB to 80 dB")]
    [InlineData("name: a, what: w, loss: 80.1, spread: 1 dB, source: s", "loss: '80.1' (80.1 dB) is outside the allowed 0 dB to 80 dB")]
    [InlineData("name: a, what: w, loss: 1, spread: 30.1 dB, source: s", "spread: '30.1 dB' is outside the allowed 0 dB to 30 dB")]
    [InlineData("name: a, what: w, loss: .nan, spread: 1 dB, source: s", "loss: '.nan' is not a finite number (0 dB to 80 dB is allowed)")]
    [InlineData("name: a, what: w, loss: 1e400, spread: 1 dB, source: s", "is too large to be a finite number (0 dB to 80 dB is allowed)")]
    [InlineData("name: a, thickness: 100, " + Rest, "thickness: '100' (100 m) is outside the allowed 0.0001 m to 2 m")]
    [InlineData("name: a, form: solid, " + Rest, "form: 'solid' is not a form of loss; write one of: sheet, bulk")]
    [InlineData("name: a, reflects: steel, " + Rest, "reflects: 'steel' is not a kind of reflection; write one of: board, metal")]
    [InlineData("name: a, reflects: metal, layers: [{of: air, thickness: 1 mm}], " + Rest, "reflects: 'dielectric' or 'layers' already determine what this row reflects; remove one of the two")]
    [InlineData("name: a, form: bulk, " + Rest, "form: a bulk loss is stated for a thickness; add 'thickness'")]
    [InlineData("name: Stud Wall, " + Rest, "name: 'Stud Wall' is not one word of lower-case letters, digits and hyphens; write, for example, 'stud-wall'")]
    [InlineData("name: air, " + Rest, "name: 'air' has a special meaning in a table; choose another name")]
    [InlineData("name: a, dielectric: {a: 0.9, b: 0, c: 0, d: 0}, " + Rest, "a: '0.9' is outside the allowed 1 to 100")]
    [InlineData("name: a, dielectric: {a: 2, b: 0, c: -1, d: 0}, " + Rest, "c: '-1' (-1 S/m) is outside the allowed 0 S/m to 100000000 S/m")]
    [InlineData("name: a, dielectric: {a: 2, b: 0, c: 1}, " + Rest, "a dielectric needs the key 'd'")]
    [InlineData("name: a, layers: [{of: air}], " + Rest, "of: air needs a thickness")]
    [InlineData("name: a, layers: [{of: air, thickness: 9 mm, tolerance: 9 mm}], " + Rest, "is more than a layer 0.009 m thick allows")]
    [InlineData("name: a, layers: [{of: a, thickness: 1 mm}], " + Rest, "of: 'a' contains itself (a > a); remove one of these layers")]
    [InlineData("name: a, dielectric: {a: 2, b: 0, c: 1, d: 0}, layers: [{of: air, thickness: 1 mm}], " + Rest, "a row has either 'dielectric' or 'layers', not both")]
    [InlineData("name: a, studs: {of: a, width: 50 mm, depth: 90 mm, spacing: 50 mm}, " + Rest, "studs 0.05 m wide do not fit at a spacing of 0.05 m")]
    [InlineData("name: a, studs: {of: b, width: 50 mm, depth: 90 mm, spacing: 400 mm}, " + Rest, "of: 'b' is not a row of this table; did you mean 'a'?")]
    [InlineData("name: a, studs: timber, " + Rest, "a group of studs is written with keys (of, width, depth, spacing), not as 'timber'")]
    public void Are_reported_of_a_row(string row, string message) =>
        Assert.Contains(message, Assert.Single(FaultsOf($"materials:\n  - {{{row}}}\n")), StringComparison.Ordinal);

    [Theory]
    [InlineData("loss: 0 dB, spread: 0 dB, thickness: 0.1 mm")]
    [InlineData("loss: 80 dB, spread: 30 dB, thickness: 2 m")]
    public void Are_none_at_the_limits(string figures) =>
        Assert.Empty(FaultsOf($"materials:\n  - {{name: a, what: w, {figures}, source: s}}\n"));

    [Fact]
    public void Tell_the_whole_ring_of_rows_built_of_one_another() =>
        Assert.EndsWith(
            "materials.yaml:4:29: of: 'a' contains itself (a > b > c > a); remove one of these layers",
            Assert.Single(FaultsOf($$"""
                materials:
                  - {name: a, layers: [{of: b}], {{Rest}}}
                  - {name: b, layers: [{of: c}], {{Rest}}}
                  - {name: c, layers: [{of: a}], {{Rest}}}
                """)),
            StringComparison.Ordinal);

    [Fact]
    public void Tell_a_layer_of_a_row_whose_inside_is_not_known() =>
        Assert.Contains(
            "of: 'b' has neither a dielectric nor layers",
            Assert.Single(FaultsOf($$"""
                materials:
                  - {name: a, layers: [{of: b, thickness: 1 mm}], {{Rest}}}
                  - {name: b, {{Rest}}}
                """)),
            StringComparison.Ordinal);

    [Fact]
    public void Tell_a_thickness_that_layers_already_have() =>
        Assert.Contains(
            "of: 'b' has layers of its own, which set its thickness; remove 'thickness' and 'tolerance' here",
            Assert.Single(FaultsOf($$"""
                materials:
                  - {name: a, layers: [{of: b, thickness: 1 mm}], {{Rest}}}
                  - {name: b, layers: [{of: air, thickness: 1 mm}], {{Rest}}}
                """)),
            StringComparison.Ordinal);

    [Fact]
    public void Do_not_follow_from_a_row_that_has_mistakes_of_its_own() =>
        Assert.Contains(
            "loss: '-1' (-1 dB)",
            Assert.Single(FaultsOf($$"""
                materials:
                  - {name: a, layers: [{of: b, thickness: 1 mm}], {{Rest}}}
                  - {name: b, what: w, loss: -1, spread: 1, source: s}
                """)),
            StringComparison.Ordinal);

    [Fact]
    public void Tell_a_member_too_deep_for_its_loss() =>
        Assert.Contains(
            "of: 'b', 2 m deep, has a loss of 100 dB, outside the allowed 0 dB to 80 dB",
            Assert.Single(FaultsOf($$"""
                materials:
                  - {name: a, studs: {of: b, width: 50 mm, depth: 2 m, spacing: 400 mm}, {{Rest}}}
                  - {name: b, form: bulk, thickness: 20 mm, {{Rest}}}
                """)),
            StringComparison.Ordinal);

    [Fact]
    public void Stop_rows_built_ever_deeper_of_rows()
    {
        StringBuilder text = new("materials:\n");
        for (int i = 0; i < 900; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  - {{name: r{i}, layers: [{{of: r{i + 1}}}], {Rest}}}\n");
        }

        text.Append(CultureInfo.InvariantCulture, $"  - {{name: r900, layers: [{{of: air, thickness: 1 mm}}], {Rest}}}\n");
        Assert.Contains(FaultsOf(text.ToString()), fault => fault.Contains("more than 12 deep", StringComparison.Ordinal));
    }

    [Fact]
    public void Stop_layers_that_multiply()
    {
        StringBuilder text = new($"materials:\n  - {{name: r0, layers: [{{of: air, thickness: 1 mm}}], {Rest}}}\n");
        for (int i = 1; i < 10; i++)
        {
            string ten = string.Join(", ", Enumerable.Repeat($"{{of: r{i - 1}}}", 10));
            text.Append(CultureInfo.InvariantCulture, $"  - {{name: r{i}, layers: [{ten}], {Rest}}}\n");
        }

        Assert.Contains(FaultsOf(text.ToString()), fault => fault.Contains("comes to more than 40 layers", StringComparison.Ordinal));
    }

    [Fact]
    public void Tell_more_rows_than_are_read()
    {
        StringBuilder text = new("materials:\n");
        for (int i = 0; i < 1001; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  - {{name: r{i}, {Rest}}}\n");
        }

        Assert.Contains("materials: this table has 1001 rows, more than the allowed 1000", Assert.Single(FaultsOf(text.ToString())), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "this file is empty; remove it to use the built-in materials.yaml")]
    [InlineData("- a\n", "the file holds a list where keys with values are needed, such as 'materials:'")]
    [InlineData("materials: []\n", "materials: the list is empty; the material table needs at least one")]
    [InlineData("material: []\n", "'material' is not a key of the material table; did you mean 'materials'?")]
    public void Tell_a_file_that_is_no_table(string text, string end) =>
        Assert.Contains(FaultsOf(text), fault => fault.EndsWith(end, StringComparison.Ordinal));

    [Theory]
    [InlineData("one\\r\\ntwo", "one\ntwo")]
    [InlineData("one\\ntwo", "one\ntwo")]
    public void A_text_may_have_lines_with_either_line_end(string written, string read)
    {
        folder.Write("materials.yaml", $"materials:\n  - {{name: a, what: \"{written}\", loss: 1 dB, spread: 1 dB, source: from memory}}\n");
        Assert.Equal(read, folder.Read().Tables!.Materials["a"].Description);
    }

    [Fact]
    public void A_carriage_return_alone_is_refused() =>
        Assert.Contains(
            "what: 'one<U+000D>two' holds U+000D, a control character; remove it",
            Assert.Single(FaultsOf("materials:\n  - {name: a, what: \"one\\rtwo\", loss: 1 dB, spread: 1 dB, source: from memory}\n")),
            StringComparison.Ordinal);

    /// <summary>The mistakes in materials.yaml; the other three files are the built-in ones.</summary>
    private string[] FaultsOf(string materials)
    {
        folder.Write("materials.yaml", materials);
        return [.. folder.Read().Problems
            .Where(p => p.Severity == Severity.Error)
            .Select(p => p.ToString().Replace(folder.Path + Path.DirectorySeparatorChar, "", StringComparison.Ordinal))];
    }
}
