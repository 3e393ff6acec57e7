using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Texts;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Tests.Texts;

public sealed class ComparisonTextTests
{
    private static readonly House House = SampleHouse.House;

    [Fact]
    public void Every_seat_has_a_row_with_its_margin_at_every_spot_and_a_mark_where_it_is_short()
    {
        Ranking ranking = Ranking.Of(new LinkModel(House, ModelDepth.Direct));
        string[] lines = Written(House, ranking).Split('\n');

        foreach (Seat seat in House.Seats)
        {
            string row = Assert.Single(lines, l => l.StartsWith(seat.Name + " ", StringComparison.Ordinal));
            IEnumerable<string> cells = House.Spots.Select(spot => Cell(ranking.Scores.Single(s => s.Spot == spot).Budgets.Single(b => b.Seat == seat)));
            Assert.EndsWith(
                $"{House.Levels[seat.LevelIndex].Name} {Tenths.ShowRequired(seat.RequiredDb)} {string.Join(' ', cells)}",
                string.Join(' ', row.Split(' ', StringSplitOptions.RemoveEmptyEntries)),
                StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Points_of_figures_stand_below_one_another_marked_or_not()
    {
        string[] lines = Written(House, Ranking.Of(new LinkModel(House, ModelDepth.Direct))).Split('\n');
        string[] rows = [.. House.Seats.Select(s => lines.First(l => l.StartsWith(s.Name + " ", StringComparison.Ordinal)))];

        Assert.Contains(rows, r => r.Contains('!', StringComparison.Ordinal));
        Assert.Contains(rows, r => !r.Contains('!', StringComparison.Ordinal));
        Assert.Single(rows.Select(r => r.LastIndexOf('.')).Distinct());
    }

    [Fact]
    public void The_verdict_names_spot_level_worst_seat_and_the_distance_to_the_others()
    {
        Ranking ranking = Made([("den a", 0, [20, 18]), ("den b", 0, [30, 16]), ("loft c", 1, [17, 12])], required: 15);

        string text = Unwrapped(House, ranking);

        Assert.Contains(
            "Choose 'den a' (den): every seat passes. Its weakest seat, 'bench', has 18.0 dB, 3.0 dB above the required 15.0 dB.",
            text,
            StringComparison.Ordinal);
        Assert.Contains("Next best: 'den b' (den), 2.0 dB worse at its weakest seat, 'bench' (1.0 dB above the required margin)", text, StringComparison.Ordinal);
        Assert.Contains(Cautions.Estimates, text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_next_spot_that_is_also_the_best_of_its_level_is_named_once()
    {
        string text = Unwrapped(House, Made([("den a", 0, [20, 18]), ("loft c", 1, [17, 16])], required: 15));

        Assert.Contains("Next best: 'loft c' (loft), the best of its level, 2.0 dB worse", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_level_is_said_to_cost_decibels_and_seats()
    {
        string text = OneBlank(Written(House, Made([("den a", 0, [20, 18]), ("den b", 0, [19, 16]), ("loft c", 1, [17, 12])], required: 15)));

        Assert.Contains("Best spot of each level, against 'den a'", text, StringComparison.Ordinal);
        Assert.Contains("\nden den a 2 of 2 none\nloft loft c 6.0 1 of 2 bench\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Best spot of each level", Written(House, Made([("den a", 0, [20, 18]), ("den b", 0, [19, 16])], required: 15)), StringComparison.Ordinal);
    }

    [Fact]
    public void Where_seats_are_used_more_and_less_the_share_of_the_play_is_reported()
    {
        Ranking ranking = Made([("den a", 0, [20, 11])], required: 15);
        Ranking weighted = Ranking.Of([new SpotScore(ranking.Scores[0].Spot, [.. ranking.Scores[0].Budgets.Select((b, i) => b with { Seat = b.Seat with { UsedDays = i == 0 ? 30 : 10 } })])]);

        Assert.DoesNotContain("of the play", Written(House, ranking), StringComparison.Ordinal);
        Assert.Contains("1 of 2 75 %\n", OneBlank(Written(House, weighted)), StringComparison.Ordinal);
        Assert.Contains("1 of 2 seats pass (75 % of the playing time).", Unwrapped(House, weighted), StringComparison.Ordinal);
    }

    [Fact]
    public void Where_no_spot_meets_every_seat_the_nearest_is_named_and_the_seats_never_met()
    {
        string text = Unwrapped(House, Made([("den a", 0, [20, 11]), ("loft c", 1, [10, 9])], required: 15));

        Assert.Contains("No spot works for every seat. Best choice: 'den a' (den); 1 of 2 seats pass. Its weakest seat, 'bench', has 11.0 dB, 4.0 dB below", text, StringComparison.Ordinal);
        Assert.Contains("Below the required margin at every spot: 'bench'.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_single_spot_is_not_said_to_be_better_than_another()
    {
        string text = Unwrapped(House, Made([("den a", 0, [20, 18])], required: 15));

        Assert.Contains("There is no other spot to compare with.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Spots_equal_as_printed_are_said_to_be_as_good()
    {
        string text = Unwrapped(House, Made([("den a", 0, [20, 18.01]), ("den b", 0, [20, 18])], required: 15));

        Assert.Contains("Next best: 'den b' (den), equal within 0.1 dB", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Many_spots_are_put_in_tables_below_one_another_that_fit_the_width()
    {
        (string, int, double[])[] spots = [.. Enumerable.Range(1, 12).Select(i => ($"spot {i} with a long name", 0, new double[] { 20, 18 + i }))];

        string[] lines = Written(House, Made(spots, required: 15)).Split('\n');

        Assert.All(lines, l => Assert.InRange(l.Length, 0, 80));
        Assert.True(lines.Count(l => l.StartsWith("sofa ", StringComparison.Ordinal)) > 1);
        Assert.All(spots, s => Assert.Contains(lines, l => l.Contains(s.Item1, StringComparison.Ordinal)));
    }

    private static string Cell(LinkBudget budget) => (budget.Passes ? "" : "! ") + Tenths.ShowMargin(budget.MarginDb, budget.RequiredDb);

    private static Ranking Made((string Name, int Level, double[] MarginsDb)[] spots, double required)
    {
        Seat[] seats = [.. House.Seats.Take(2).Select(s => s with { RequiredDb = required })];
        LinkBudget made = LinkEvaluation.Budget(new LinkModel(House, ModelDepth.Direct), House.Spots[0], House.Seats[0]);
        return Ranking.Of(spots.Select(s =>
        {
            Spot spot = new(s.Name, s.Level, default, 1);
            return new SpotScore(spot, [.. s.MarginsDb.Zip(seats, (m, seat) => made with { Spot = spot, Seat = seat, MarginDb = m })]);
        }));
    }

    private static string OneBlank(string text) => string.Join('\n', text.Split('\n').Select(line => string.Join(' ', line.Split(' ', StringSplitOptions.RemoveEmptyEntries))));

    private static string Unwrapped(House house, Ranking ranking) => Written(house, ranking).Replace('\n', ' ');

    private static string Written(House house, Ranking ranking)
    {
        var output = new StringWriter { NewLine = "\n" };
        new ComparisonText(
            house with { Spots = [.. ranking.Scores.Select(s => s.Spot).OrderBy(s => s.Name, StringComparer.Ordinal)], Seats = [.. ranking.Scores[0].Budgets.Select(b => b.Seat)] },
            ranking).Write(output, 80);
        return output.ToString();
    }
}
