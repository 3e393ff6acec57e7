using System.Globalization;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;
using LinkMargin.Files.Tables;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Texts;

namespace LinkMargin.Reports.Tests.Texts;

public sealed class BudgetTextTests
{
    private static readonly Scene Scene = Scene.Compile(SampleHouse.House);

    public static TheoryData<int, int> Links
    {
        get
        {
            var links = new TheoryData<int, int>();
            for (int spot = 0; spot < SampleHouse.House.Spots.Count; spot++)
            {
                for (int seat = 0; seat < SampleHouse.House.Seats.Count; seat++)
                {
                    links.Add(spot, seat);
                }
            }

            return links;
        }
    }

    [Theory]
    [MemberData(nameof(Links))]
    public void Printed_losses_add_up_to_the_printed_path_loss_and_the_printed_budget_to_the_printed_margin(int spot, int seat)
    {
        LinkBudget budget = LinkEvaluation.Budget(new LinkModel(Scene, ModelDepth.Direct), SampleHouse.House.Spots[spot], SampleHouse.House.Seats[seat]);
        string[] lines = Written(budget).Split('\n');

        int rule = Array.FindIndex(lines, l => l.TrimStart().StartsWith("total", StringComparison.Ordinal)) - 1;
        int first = Array.FindIndex(lines, l => l.TrimStart().StartsWith("free space", StringComparison.Ordinal));
        decimal together = LastFigure(lines[rule + 1]);
        Assert.Equal(together, lines[first..rule].Sum(LastFigure));
        for (int direction = 0; direction < 2; direction++)
        {
            Dictionary<string, decimal> column = BudgetColumn(lines, direction);
            Assert.Equal(-together, column["path loss"]);
            Assert.Equal(
                column["received"],
                column["transmit power"] + column["antenna gains, both ends"] + column["grip and body"] + column["polarisation mismatch"] + column["path loss"]);
            Assert.Equal(column["median margin"], column["received"] - column["receiver sensitivity"]);
            Assert.InRange((double)column["median margin"] - budget.Directions[direction].MarginDb, -0.11, 0.11);
        }

        Assert.Equal(
            Tenths.ShowMargin(budget.MarginDb),
            Enumerable.Range(0, 2).Min(d => BudgetColumn(lines, d)["median margin"]).ToString("0.0", CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Every_crossing_is_named_with_its_level_material_angle_and_loss()
    {
        LinkBudget budget = LinkEvaluation.Budget(new LinkModel(Scene, ModelDepth.Direct), SampleHouse.House.Spots[0], SampleHouse.House.Seats[1]);

        string line = Assert.Single(Written(budget).Split('\n'), l => l.Contains("games den | passage", StringComparison.Ordinal));

        // The wall at x = 4 is met head on but for 4 m to the side over 7 m, and 0.3 m down.
        double angle = double.RadiansToDegrees(Math.Acos(7 / budget.DistanceMetres));
        Assert.Equal(
            string.Create(CultureInfo.InvariantCulture, $"{budget.DistanceMetres / 2:0.00} m wall games den | passage, brick den {angle:0} deg listed 6.5"),
            string.Join(' ', line.Split(' ', StringSplitOptions.RemoveEmptyEntries)));
    }

    [Fact]
    public void A_floor_is_said_to_lie_above_its_level_and_joists_say_their_share()
    {
        LinkBudget budget = LinkEvaluation.Budget(new LinkModel(Scene, ModelDepth.Direct), SampleHouse.House.Spots[0], SampleHouse.House.Seats[2]);

        string text = Written(budget);

        Assert.Equal(3, text.Split('\n').Count(l => l.Contains("above den", StringComparison.Ordinal)));
        Assert.Contains(text.Split('\n'), l => l.Contains("joists", StringComparison.Ordinal) && l.Contains(" % ", StringComparison.Ordinal));
        Assert.Contains("first Fresnel zone", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_path_without_shares_has_no_such_column()
    {
        LinkBudget budget = LinkEvaluation.Budget(new LinkModel(Scene, ModelDepth.Direct), SampleHouse.House.Spots[0], SampleHouse.House.Seats[0]);

        Assert.DoesNotContain("share", Written(budget), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void The_last_sentence_says_whether_the_seat_is_met_and_by_how_much()
    {
        Seat sofa = SampleHouse.House.Seats[0];
        LinkBudget met = LinkEvaluation.Budget(new LinkModel(Scene, ModelDepth.Direct), SampleHouse.House.Spots[0], sofa);
        LinkBudget asked = LinkEvaluation.Budget(new LinkModel(Scene, ModelDepth.Direct), SampleHouse.House.Spots[0], sofa with { RequiredDb = met.MarginDb + 3 });

        Assert.Contains(" dB above the required 15.0 dB: 'sofa' passes.", Unwrapped(met), StringComparison.Ordinal);
        Assert.Contains(" 3.0 dB below the required ", Unwrapped(asked), StringComparison.Ordinal);
        Assert.Contains("does not pass.", Unwrapped(asked), StringComparison.Ordinal);
    }

    [Fact]
    public void A_seat_short_by_a_hair_is_not_said_to_be_short_by_nothing()
    {
        Seat sofa = SampleHouse.House.Seats[0];
        double marginDb = LinkEvaluation.Budget(new LinkModel(Scene, ModelDepth.Direct), SampleHouse.House.Spots[0], sofa).MarginDb;
        Seat above = sofa with { RequiredDb = marginDb + 1e-7 }, at = sofa with { RequiredDb = marginDb };

        Assert.Contains(" 0.1 dB below ", Unwrapped(LinkEvaluation.Budget(new LinkModel(Scene, ModelDepth.Direct), SampleHouse.House.Spots[0], above)), StringComparison.Ordinal);
        Assert.Contains("exactly at", Unwrapped(LinkEvaluation.Budget(new LinkModel(Scene, ModelDepth.Direct), SampleHouse.House.Spots[0], at)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_house_in_feet_is_explained_in_feet()
    {
        LinkBudget budget = LinkEvaluation.Budget(new LinkModel(Scene, ModelDepth.Direct), SampleHouse.House.Spots[0], SampleHouse.House.Seats[0]);

        string text = Written(budget, LengthUnit.Foot);

        Assert.Contains("Straight distance 9ft 7in;", text, StringComparison.Ordinal);
        Assert.Contains("free space over 9ft 7in", text, StringComparison.Ordinal);
    }

    [Fact]
    public void No_line_is_wider_than_asked_for()
    {
        LinkBudget budget = LinkEvaluation.Budget(new LinkModel(Scene, ModelDepth.Direct), SampleHouse.House.Spots[1], SampleHouse.House.Seats[1]);

        Assert.All(Written(budget).Split('\n'), line => Assert.InRange(line.Length, 0, 80));
    }

    private static string Unwrapped(LinkBudget budget) => Written(budget).Replace('\n', ' ');

    private static string Written(LinkBudget budget, LengthUnit unit = LengthUnit.Metre)
    {
        var output = new StringWriter { NewLine = "\n" };
        new BudgetText(new LoadedHouse(SampleHouse.House, unit, MaterialTablesFile.ReadBuiltIn().Tables!)).Write(budget, output, 80);
        return output.ToString();
    }

    private static decimal LastFigure(string line) =>
        decimal.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[^1], CultureInfo.InvariantCulture);

    private static Dictionary<string, decimal> BudgetColumn(string[] lines, int direction)
    {
        string[] names = ["transmit power", "antenna gains, both ends", "grip and body", "polarisation mismatch", "path loss", "received", "receiver sensitivity", "median margin"];
        return names.ToDictionary(name => name, name =>
        {
            string line = lines.First(l => l.StartsWith(name + "  ", StringComparison.Ordinal));
            string figure = line[name.Length..].Split(' ', StringSplitOptions.RemoveEmptyEntries)[direction];
            return decimal.Parse(figure, CultureInfo.InvariantCulture);
        });
    }
}
