using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Cli.Output;

/// <summary>Seats against spots, the ranking, and which spot to choose.</summary>
/// <param name="house">The house.</param>
/// <param name="ranking">Its ranking, of at least one spot.</param>
internal sealed class ComparisonText(House house, Ranking ranking)
{
    // Wide enough for a margin with its mark, narrow enough that a handful of spots stand side by side.
    private const int HeadingWidth = 14;

    private readonly SpotScore[] inOrder =
        [.. ranking.Scores.OrderBy(score => house.Spots.ToList().IndexOf(score.Spot))];

    /// <summary>Seats with people who stand in the way.</summary>
    public IReadOnlyList<Seat> Occupied { get; init; } = [];

    /// <summary>Writes all of it.</summary>
    public void Write(TextWriter output, int width)
    {
        output.WriteLine($"{house.Name}: margin in dB, seats against spots. '!' marks a seat short of what it asks for.");
        if (Occupied.Count > 0)
        {
            WordWrap.Write($"With people on {OccupiedWords.List(Occupied)}, who stand in the way of all links but their own.", output, width);
        }

        if (house.Seats.Any(seat => seat.Plays is not null))
        {
            WordWrap.Write("'-': another console is played from this seat, as 'plays' in the house file says.", output, width);
        }

        foreach (SpotScore[] block in inOrder.Chunk(SpotsSideBySide(width)))
        {
            output.WriteLine();
            TableOf(block).WriteTo(output, width);
        }

        output.WriteLine();
        output.WriteLine("Ranking, by the seat that is worst off at each spot");
        output.WriteLine();
        WriteRanking(output, width);
        output.WriteLine();
        WriteLevels(output, width);
        foreach (string paragraph in new VerdictSentences(house, ranking).All)
        {
            WordWrap.Write(paragraph, output, width);
        }
    }

    // As many spots side by side as fit, at least one.
    private int SpotsSideBySide(int width) => Enumerable.Range(1, inOrder.Length).Reverse()
        .FirstOrDefault(count => inOrder.Chunk(count).All(block => TableOf(block).NaturalWidth <= width), 1);

    private TextTable TableOf(SpotScore[] spots)
    {
        var table = new TextTable(
        [
            new Column("seat"),
            new Column("level"),
            new Column("required", Align.Right),
            .. spots.Select(s => new Column(Heading(s.Spot), Align.Right)),
        ]);
        for (int seat = 0; seat < house.Seats.Count; seat++)
        {
            Seat row = house.Seats[seat];
            table.Add([row.Name, LevelOf(row.LevelIndex), Tenths.Show(row.RequiredDb), .. spots.Select(s => s.With(row) is { } budget ? Cell(budget) : "-")]);
        }

        table.AddRule();
        table.Add(["worst seat", "", "", .. spots.Select(s => Broken(s.Worst.Seat.Name))]);
        table.Add(["above required", "", "", .. spots.Select(s => Tenths.Signed(Headroom.TenthsOf(s)))]);
        return table;
    }

    private void WriteRanking(TextWriter output, int width)
    {
        var table = new TextTable(
        [
            new Column("", Align.Right),
            new Column("spot") { Wraps = true },
            new Column("level"),
            new Column("worst seat") { Wraps = true },
            new Column("margin", Align.Right),
            new Column("required", Align.Right),
            new Column("difference", Align.Right),
            new Column("seats met", Align.Right),
            .. IsWeighted ? [new Column("of the play", Align.Right)] : Array.Empty<Column>(),
        ]);
        for (int i = 0; i < ranking.Scores.Count; i++)
        {
            SpotScore score = ranking.Scores[i];
            LinkBudget worst = score.Worst;
            table.Add(
            [
                FormattableString.Invariant($"{i + 1}"),
                score.Spot.Name,
                LevelOf(score.Spot.LevelIndex),
                worst.Seat.Name,
                Cell(worst),
                Tenths.Show(worst.RequiredDb),
                Tenths.Signed(Headroom.TenthsOf(score)),
                FormattableString.Invariant($"{score.SeatsMet} of {score.Seats}"),
                .. IsWeighted ? [FormattableString.Invariant($"{100 * score.MetShare:0} %")] : Array.Empty<string>(),
            ]);
        }

        table.WriteTo(output, width);
    }

    // What the choice of another level costs, where there is one to choose.
    private void WriteLevels(TextWriter output, int width)
    {
        var choice = Choice.Of(ranking);
        if (choice.BestOfOtherLevels.Count == 0)
        {
            return;
        }

        output.WriteLine($"Levels, by the best spot of each: what it costs against '{choice.Best.Spot.Name}'");
        output.WriteLine();
        var table = new TextTable(
        [
            new Column("level"),
            new Column("best spot") { Wraps = true },
            new Column("costs, dB", Align.Right),
            new Column("seats met", Align.Right),
            new Column("seats lost") { Wraps = true },
        ]);
        foreach (SpotScore score in choice.BestOfLevels)
        {
            IReadOnlyList<string> lost = choice.SeatsLost(score);
            table.Add(
                LevelOf(score.Spot.LevelIndex),
                score.Spot.Name,
                score == choice.Best ? "" : Tenths.Show(Headroom.TenthsOf(choice.Best) - Headroom.TenthsOf(score)),
                FormattableString.Invariant($"{score.SeatsMet} of {score.Seats}"),
                lost.Count == 0 ? "none" : string.Join(", ", lost));
        }

        table.WriteTo(output, width);
        output.WriteLine();
    }

    private bool IsWeighted => house.Seats.Select(seat => seat.UsedDays).Distinct().Count() > 1;

    private string LevelOf(int index) => house.Levels[index].Name;

    private string Heading(Spot spot) => $"{Broken(spot.Name)}\n({LevelOf(spot.LevelIndex)})";

    private static string Broken(string name) => string.Join('\n', WordWrap.Lines(name, HeadingWidth));

    // The mark stands in front, so that the points of all figures stay below one another.
    private static string Cell(LinkBudget budget) => (budget.Meets ? "" : "! ") + Tenths.Show(budget.MarginDb);
}
