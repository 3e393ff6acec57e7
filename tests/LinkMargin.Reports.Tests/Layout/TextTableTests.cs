using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Tests.Layout;

public sealed class TextTableTests
{
    [Fact]
    public void Words_stand_left_and_figures_right_and_no_line_ends_in_blanks()
    {
        var table = new TextTable([new Column("seat"), new Column("margin", Align.Right), new Column("note")]);
        table.Add("sofa", "7.5", "");
        table.AddRule();
        table.Add("bench", "! -12.5", "far");

        Assert.Equal(
            """
            seat    margin  note
            --------------------
            sofa       7.5
            --------------------
            bench  ! -12.5  far

            """,
            Written(table, 100));
    }

    [Fact]
    public void Headings_of_several_lines_stand_on_the_rule()
    {
        var table = new TextTable([new Column("seat"), new Column("den\nrack", Align.Right)]);
        table.Add("sofa", "7.5");

        Assert.Equal(
            """
                   den
            seat  rack
            ----------
            sofa   7.5

            """,
            Written(table, 100));
    }

    [Fact]
    public void A_column_that_wraps_keeps_the_table_within_its_width()
    {
        var table = new TextTable([new Column("name"), new Column("source") { Wraps = true }]);
        table.Add("stud", "common practice, a figure planners use and repeat, with no measurement to point at");

        string[] lines = Written(table, 40).Split('\n');

        Assert.All(lines, line => Assert.InRange(line.Length, 0, 40));
        Assert.StartsWith("stud  common practice, a figure", lines[2], StringComparison.Ordinal);
        Assert.StartsWith("      ", lines[3], StringComparison.Ordinal);
    }

    [Fact]
    public void A_word_longer_than_its_column_is_cut_and_nothing_is_lost()
    {
        var table = new TextTable([new Column("x") { Wraps = true }]);
        string word = new('w', 50);
        table.Add(word);

        Assert.Equal(word, string.Concat(Written(table, 20).Split('\n').Skip(2)));
    }

    [Fact]
    public void Letters_with_accents_take_one_place_each()
    {
        var table = new TextTable([new Column("seat"), new Column("dB", Align.Right)]);
        table.Add("cafe\u0301", "1.0");
        table.Add("cafes", "2.0");

        string[] lines = Written(table, 100).Split('\n');

        Assert.Equal(lines[2].Length - 1, lines[3].Length);
    }

    private static string Written(TextTable table, int width)
    {
        var output = new StringWriter { NewLine = "\n" };
        table.WriteTo(output, width);
        return output.ToString();
    }
}
