using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Texts;

/// <summary>The effect of an edit of the house on each spot.</summary>
/// <param name="house">The house as edited.</param>
/// <param name="before">The ranking for the house as in its file.</param>
/// <param name="after">The ranking for the edited house.</param>
internal sealed class ChangeText(House house, Ranking before, Ranking after)
{
    /// <summary>Writes the spots in the house's order, before and after, and the seats that change.</summary>
    public void Write(TextWriter output, int width)
    {
        WordWrap.Write("Effect of the changes: margin to count on against required (dB), at the weakest seat of each spot", output, width);
        output.WriteLine();
        var table = new TextTable(
        [
            new Column("spot") { Wraps = true },
            new Column("before", Align.Right),
            new Column("weakest seat") { Wraps = true },
            new Column("after", Align.Right),
            new Column("weakest seat") { Wraps = true },
            new Column("change", Align.Right),
            new Column("most changed seat") { Wraps = true },
        ]);
        foreach (Spot spot in house.Spots)
        {
            if (ScoreOf(before, spot) is not { } was || ScoreOf(after, spot) is not { } now)
            {
                continue;
            }

            long old = Headroom.TenthsOf(was), changed = Headroom.TenthsOf(now);
            table.Add(
                spot.Name,
                Tenths.Signed(old),
                was.Weakest.Seat.Name,
                Tenths.Signed(changed),
                now.Weakest.Seat.Name,
                Tenths.Signed(changed - old),
                MostChanged(was, now));
        }

        table.WriteTo(output, width);
    }

    private static SpotScore? ScoreOf(Ranking ranking, Spot spot) => ranking.Scores.FirstOrDefault(score => score.Spot.Name == spot.Name);

    private static string MostChanged(SpotScore was, SpotScore now)
    {
        (string seat, long change) = now.Budgets
            .Join(was.Budgets, b => b.Seat.Name, b => b.Seat.Name, (after, before) => (after.Seat.Name, Tenths.OfMargin(now.By.MarginDb(after)) - Tenths.OfMargin(was.By.MarginDb(before))))
            .MaxBy(pair => Math.Abs(pair.Item2));
        return change == 0 ? "none" : $"{seat}, {Tenths.Signed(change)}";
    }
}
