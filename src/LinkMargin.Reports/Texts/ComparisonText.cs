using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Runs;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Json;
using LinkMargin.Files.Quantities;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Texts;

/// <summary>The table of seats and spots, the ranking, and which spot to choose.</summary>
/// <param name="house">The house.</param>
/// <param name="ranking">Its ranking, of at least one spot.</param>
internal sealed class ComparisonText(House house, Ranking ranking)
{
    private const int LikelyWidth = 7;
    private const string Signs = $"'!' = below the required margin; {Headroom.Note}.";

    private readonly SpotScore[] inOrder =
        [.. ranking.Scores.OrderBy(score => house.Spots.ToList().IndexOf(score.Spot))];

    /// <summary>Seats with people who obstruct other links.</summary>
    public IReadOnlyList<Seat> Occupied { get; init; } = [];

    /// <summary>The uncertainty of its links; null if it was not computed.</summary>
    public HouseUncertainty? Uncertainty { get; init; }

    /// <summary>How likely each spot is the best; null if that was not computed.</summary>
    public CloseCall? Call { get; init; }

    /// <summary>The cable cost of each spot, in the order of the ranking; empty if the house file has no displays.</summary>
    public IReadOnlyList<SpotRuns> Runs { get; init; } = [];

    /// <summary>How lengths are written.</summary>
    public LengthFormat Lengths { get; init; } = LengthFormat.Metric;

    /// <summary>Writes the whole comparison.</summary>
    public void Write(TextWriter output, int width)
    {
        WordWrap.Write(
            Uncertainty is null
                ? $"{house.Name}: median margin (dB), by seat and spot. {Signs}"
                : $"{house.Name}: margin to count on (dB), {UncertaintyWords.Reached(Uncertainty.Confidence)}, by seat and spot. {Signs}",
            output,
            width);
        if (Occupied.Count > 0)
        {
            WordWrap.Write($"With people on {OccupiedWords.List(Occupied)}, who obstruct all links but their own.", output, width);
        }

        if (house.Seats.Any(seat => seat.Plays is not null))
        {
            WordWrap.Write("'-': this seat plays another console ('plays' in the house file).", output, width);
        }

        foreach (SpotScore[] block in Blocks(TableOf, width))
        {
            output.WriteLine();
            TableOf(block).WriteTo(output, width);
        }

        if (Uncertainty is not null)
        {
            output.WriteLine();
            WordWrap.Write("Median margin (dB) and probability that the seat passes", output, width);
            foreach (SpotScore[] block in Blocks(LikelyOf, width))
            {
                output.WriteLine();
                LikelyOf(block).WriteTo(output, width);
            }
        }

        output.WriteLine();
        WordWrap.Write("Ranking, by the weakest seat of each spot (margins in dB)", output, width);
        output.WriteLine();
        WriteRanking(output, width);
        if (IsWeighted)
        {
            output.WriteLine();
            WordWrap.Write("share of play: part of the playing time at seats that pass, each seat by the days it is used ('used' in the house file).", output, width);
        }

        output.WriteLine();
        WriteLevels(output, width);
        WriteRuns(output, width);
        foreach (string paragraph in new VerdictSentences(house, ranking) { Call = Call }.All)
        {
            WordWrap.Write(paragraph, output, width);
        }
    }

    private void WriteRuns(TextWriter output, int width)
    {
        if (Runs.Count == 0)
        {
            return;
        }

        WordWrap.Write("Video cables that each spot needs ('linkmargin runs HOUSE --spot SPOT' prints its pull sheet)", output, width);
        output.WriteLine();
        CableTable.Write(Runs.Select(runs => (runs.Spot.Name, CablesDocument.Of(runs))), "spot", Lengths, output, width);
        output.WriteLine();
        if (SpotCableWords.FewerRuns(ranking, Runs) is { Length: > 0 } fewer)
        {
            WordWrap.Write(fewer, output, width);
        }
    }

    // As many spots side by side as fit, at least one; if several blocks are needed, they are of about equal size.
    private IEnumerable<SpotScore[]> Blocks(Func<SpotScore[], TextTable> table, int width)
    {
        int blocks = Enumerable.Range(1, inOrder.Length)
            .FirstOrDefault(count => inOrder.Chunk(InEach(count)).All(block => table(block).FitsIn(width)), inOrder.Length);
        return inOrder.Chunk(InEach(blocks));

        int InEach(int count) => (inOrder.Length + count - 1) / count;
    }

    // The median margin and the probability of passing.
    private TextTable LikelyOf(SpotScore[] spots)
    {
        var table = new TextTable([new Column("seat"), new Column("level"), .. spots.Select(s => new Column(Heading(s.Spot), Align.Right))]);
        foreach (Seat row in house.Seats)
        {
            table.Add([row.Name, LevelOf(row.LevelIndex), .. spots.Select(s => s.With(row) is { } budget ? Likely(budget) : "-")]);
        }

        table.AddRule();
        table.Add(["all seats", "", .. spots.Select(s => UncertaintyWords.Likely(Uncertainty!.ProbabilityAllPass(s.Budgets)))]);
        return table;
    }

    private string Likely(LinkBudget budget) =>
        $"{Tenths.ShowMargin(Uncertainty!.With(budget).MedianDb)}{UncertaintyWords.Likely(Uncertainty.ProbabilityPasses(budget)),LikelyWidth}";

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
            table.Add([row.Name, LevelOf(row.LevelIndex), Tenths.ShowRequired(row.RequiredDb), .. spots.Select(s => s.With(row) is { } budget ? Margin(s, budget) : "-")]);
        }

        table.AddRule();
        table.Add(["weakest seat", "", "", .. spots.Select(s => Cell.Words(s.Weakest.Seat.Name))]);
        table.Add([Headroom.Name, "", "", .. spots.Select(s => Tenths.Signed(Headroom.TenthsOf(s)))]);
        return table;
    }

    private void WriteRanking(TextWriter output, int width)
    {
        var table = new TextTable(
        [
            new Column("", Align.Right),
            new Column("spot") { Wraps = true },
            new Column("level"),
            new Column("weakest seat") { Wraps = true },
            new Column(Uncertainty is null ? "median" : "to count\non", Align.Right),
            new Column("required", Align.Right) { ShortHeading = "needs" },
            new Column(Headroom.Heading, Align.Right),
            new Column("seats\npass", Align.Right),
            .. IsWeighted ? [new Column("share of\nplay", Align.Right)] : Array.Empty<Column>(),
            .. Call is null ? Array.Empty<Column>() : [new Column("probably\nbest", Align.Right)],
        ]);
        for (int i = 0; i < ranking.Scores.Count; i++)
        {
            SpotScore score = ranking.Scores[i];
            LinkBudget weakest = score.Weakest;
            table.Add(
            [
                FormattableString.Invariant($"{i + 1}"),
                score.Spot.Name,
                LevelOf(score.Spot.LevelIndex),
                weakest.Seat.Name,
                Margin(score, weakest),
                Tenths.ShowRequired(weakest.RequiredDb),
                Tenths.Signed(Headroom.TenthsOf(score)),
                FormattableString.Invariant($"{score.SeatsPassing} of {score.Seats}"),
                .. IsWeighted ? [FormattableString.Invariant($"{100 * score.PassingShare:0} %")] : Array.Empty<string>(),
                .. Call is null ? Array.Empty<string>() : [UncertaintyWords.Likely(Call.ProbabilitiesBest[i])],
            ]);
        }

        table.WriteTo(output, width);
    }

    // The cost of choosing another level, if there is one.
    private void WriteLevels(TextWriter output, int width)
    {
        var choice = Choice.Of(ranking);
        if (choice.BestOfOtherLevels.Count == 0)
        {
            return;
        }

        WordWrap.Write($"Best spot of each level, against '{choice.Best.Spot.Name}'", output, width);
        output.WriteLine();
        var table = new TextTable(
        [
            new Column("level"),
            new Column("best spot") { Wraps = true },
            new Column("costs (dB)", Align.Right),
            new Column("seats pass", Align.Right),
            new Column("seats lost") { Wraps = true },
        ]);
        foreach (SpotScore score in choice.BestOfLevels)
        {
            IReadOnlyList<string> lost = choice.SeatsLost(score);
            table.Add(
                LevelOf(score.Spot.LevelIndex),
                score.Spot.Name,
                score == choice.Best ? "" : Tenths.Show(Headroom.TenthsOf(choice.Best) - Headroom.TenthsOf(score)),
                FormattableString.Invariant($"{score.SeatsPassing} of {score.Seats}"),
                lost.Count == 0 ? "none" : string.Join(", ", lost));
        }

        table.WriteTo(output, width);
        output.WriteLine();
    }

    private bool IsWeighted => house.Seats.Select(seat => seat.UsedDays).Distinct().Count() > 1;

    private string LevelOf(int index) => house.Levels[index].Name;

    private string Heading(Spot spot) => $"{spot.Name}\n({LevelOf(spot.LevelIndex)})";

    // The '!' comes first, so that the decimal points of all numbers are aligned.
    private static string Margin(SpotScore score, LinkBudget budget) =>
        (score.By.Passes(budget) ? "" : "! ") + Tenths.ShowMargin(score.By.MarginDb(budget), budget.RequiredDb);
}
