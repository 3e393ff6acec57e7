using System.Globalization;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Decisions.Remedies;
using LinkMargin.Engine.Houses;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Texts;

/// <summary>Remedies for a spot, with effort and cautions.</summary>
/// <param name="loaded">The house.</param>
/// <param name="result">The remedies that were found.</param>
internal sealed class ImproveText(LoadedHouse loaded, ImproveResult result)
{
    private const int MostReported = 12;
    private const int MostAlternatives = 3;

    private readonly RemedyWords words = new(loaded);

    /// <summary>Seats with people who obstruct other links.</summary>
    public IReadOnlyList<Seat> Occupied { get; init; } = [];

    /// <summary>Share of cases in which the margin to count on is reached, 0 to 1.</summary>
    public required double Confidence { get; init; }

    /// <summary>Writes the remedies.</summary>
    public void Write(TextWriter output, int width)
    {
        string spot = result.Before.Spot.Name, seat = result.Before.Weakest.Seat.Name;
        WordWrap.Write(
            $"{loaded.House.Name}, console at '{spot}': {SeatWords.Passing(result.Before)}; "
                + $"the margin to count on ({UncertaintyWords.Reached(Confidence)}) at the weakest, '{seat}', is {Headroom.Words(result.Before)} the required "
                + $"{Tenths.ShowRequired(result.Before.Weakest.RequiredDb)} dB.",
            output,
            width);
        if (Occupied.Count > 0)
        {
            WordWrap.Write($"With people on {OccupiedWords.List(Occupied)}, who obstruct all links but their own.", output, width);
        }

        output.WriteLine();
        RemedyResult[] reported = [.. result.Alone.Take(MostReported)];
        if (reported.Length == 0)
        {
            WordWrap.Write(FormattableString.Invariant(
                $"None of {result.Tried} remedies tried gains {ImproveRequest.LeastGainDb:0.0} dB or more. Look for another place with 'linkmargin place'."), output, width);
            return;
        }

        WordWrap.Write(FormattableString.Invariant($"Remedies that help the weakest seat, of {result.Tried} tried, each recomputed with the full model (gains and margins in dB):"), output, width);
        output.WriteLine();
        WriteTable(reported, 1, output, width);
        if (result.Pairs.Count > 0)
        {
            output.WriteLine();
            WordWrap.Write("Pairs of remedies (gains and margins in dB)", output, width);
            output.WriteLine();
            WriteTable(result.Pairs, reported.Length + 1, output, width);
        }

        output.WriteLine();
        WordWrap.Write(
            $"gain: improvement of the weakest seat, which may then be another seat; there: improvement at '{seat}'; passes there: probability that this seat then passes; {Headroom.Note}, at the weakest seat then; all pass: probability that every seat passes.", output, width);
        WordWrap.Write(Verdict, output, width);
        foreach (string mind in reported.Concat(result.Pairs).SelectMany(r => r.Remedies).Select(words.Mind).Where(m => m.Length > 0).Distinct())
        {
            WordWrap.WriteHanging(mind, output, width, "* ", "  ");
        }

        foreach (string line in CautionLines(reported))
        {
            WordWrap.Write(line, output, width);
        }

        WordWrap.Write(Cautions.Estimates, output, width);
    }

    private string Verdict
    {
        get
        {
            if (result.Before.PassesAll)
            {
                return "Every seat passes already; these remedies add margin.";
            }

            if (result.Alone.FirstOrDefault(r => r.After.PassesAll) is { } one)
            {
                return $"This alone makes every seat pass: {words.What(one.Remedies[0])}.";
            }

            int[] pairs = [.. Enumerable.Range(0, result.Pairs.Count).Where(i => result.Pairs[i].After.PassesAll).Select(i => Math.Min(result.Alone.Count, MostReported) + 1 + i)];
            return pairs.Length > 0
                ? FormattableString.Invariant($"No remedy alone makes every seat pass, but two together do: {(pairs.Length == 1 ? "pair" : "pairs")} {string.Join(" and ", pairs)}.")
                : "No remedy makes every seat pass. 'linkmargin place' looks for another place.";
        }
    }

    private IEnumerable<string> CautionLines(IEnumerable<RemedyResult> reported) => Cautions.About(
    [
        ($"'{result.Before.Weakest.Seat.Name}' as things are", result.Before.Weakest.Cautions),
        .. reported.Concat(result.Pairs).Select(one => ($"'{one.After.Weakest.Seat.Name}' with {string.Join(", and ", one.Remedies.Select(words.What))}", one.After.Weakest.Cautions)),
    ]);

    // A remedy needs a sentence, which no column has space for: the sentences are numbered and the table refers to them.
    private void WriteTable(IReadOnlyList<RemedyResult> results, int firstNumber, TextWriter output, int width)
    {
        var table = new TextTable(
        [
            new Column("", Align.Right),
            new Column("effort"),
            new Column("gain", Align.Right),
            new Column("there", Align.Right),
            new Column("passes\nthere", Align.Right),
            new Column("weakest\nseat then") { Wraps = true },
            new Column(Headroom.Heading, Align.Right),
            new Column("seats\npass", Align.Right),
            new Column("all\npass", Align.Right),
        ]);
        foreach ((RemedyResult one, int i) in results.Select((one, i) => (one, i)))
        {
            string number = (firstNumber + i).ToString(CultureInfo.InvariantCulture);
            string what = string.Join(", and ", one.Remedies.Select(words.What)) + Alternatives(one);
            WordWrap.WriteHanging($"{char.ToUpperInvariant(what[0])}{what[1..]}.", output, width, $"{number,2}. ", "    ");
            table.Add(
                number,
                RemedyWords.EffortOf(one.Effort),
                Gain(one),
                There(one.After),
                one.ProbabilityAtSeat is { } passes ? UncertaintyWords.Likely(passes) : "",
                one.After.Weakest.Seat.Name,
                Tenths.Signed(Headroom.TenthsOf(one.After)),
                FormattableString.Invariant($"{one.After.SeatsPassing} of {one.After.Seats}"),
                one.After.ProbabilityAllPass is { } likely ? UncertaintyWords.Likely(likely) : "-");
        }

        output.WriteLine();
        table.WriteTo(output, width);
    }

    private string Gain(RemedyResult one) => Tenths.Signed(Headroom.TenthsOf(one.After) - Headroom.TenthsOf(result.Before));

    // Each with its gain in the weakest seat's headroom.
    private string Alternatives(RemedyResult one)
    {
        int others = one.Alternatives.Count - MostAlternatives;
        return string.Concat(one.Alternatives.Take(MostAlternatives).Select(other => $"; or {words.Otherwise(other.Remedies[0])} ({Gain(other)})"))
            + (others > 0 ? FormattableString.Invariant($"; {others} more in --json") : "");
    }

    // The difference of the printed values, so that 'compare' with the same edit shows the same.
    private string There(SpotScore after) => after.With(result.Before.Weakest.Seat) is { } budget
        ? Tenths.Signed(Tenths.OfMargin(after.By.MarginDb(budget)) - Tenths.OfMargin(result.Before.By.MarginDb(result.Before.Weakest)))
        : "cable";
}
