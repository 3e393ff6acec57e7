using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Sensitivity;
using LinkMargin.Reports.Documents;
using LinkMargin.Reports.Pictures;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Handover;

/// <summary>How certain the recommendation is, and what could change it.</summary>
/// <param name="findings">What was computed.</param>
/// <param name="pictures">The pictures; null where only sentences are wanted.</param>
internal sealed class CertaintySection(HandoverFindings findings, HandoverPictures? pictures)
{
    /// <summary>So many unknowns are listed to be verified.</summary>
    public const int Verified = 3;

    private readonly AssumptionWords words = new(findings.House);

    /// <summary>How certain it is.</summary>
    public ReportSection Certainty => new("certainty", "How certain this is",
    [
        new ParagraphBlock(HowClear),
        new ParagraphBlock(
            $"Nobody has looked inside the walls. So the figures rest on {FormattableString.Invariant($"{findings.Uncertainty.Draws}")} versions of the house that all fit its description: walls, floors and radios "
                + "differ from one to the next as much as they do in practice, and so does what the model leaves out (furniture, pipes, what stands near)."),
        .. findings.Study.Effects.Count > 0 ? [pictures!.Assumptions] : Array.Empty<ReportBlock>(),
    ]);

    /// <summary>What to look at on site, the three that matter most.</summary>
    public ReportSection ToVerify
    {
        get
        {
            UnknownEffect[] checks = Checks;
            UnknownEffect[] deciding = [.. checks.Where(effect => effect.Alternatives.Any(one => one.OtherBest(findings.Ranking) is not null))];
            UnknownEffect[] doors = [.. findings.Study.Effects.Where(effect => effect.Unknown.Kind == UnknownKind.DoorState && effect.Alternatives.Any(Matters))];
            string count = FormattableString.Invariant($"{findings.Study.Considered}");
            string intro = checks.Length == 0 ? $"None of {count} assumptions looked at moves the result."
                : deciding.Length == 0 ? $"None of {count} assumptions looked at changes the recommendation by itself. These move it most:"
                : $"Of {count} assumptions looked at, these matter most. Look at them before any work:";
            return new ReportSection("verify", "What to verify on site",
            [
                new ParagraphBlock(intro),
                new ListBlock([.. checks.Select(ItemOf)], IsNumbered: true),
                .. doors.Length > 0 ? [new ParagraphBlock($"Keep open during play: {string.Join("; ", doors.Select(Door))}.")] : Array.Empty<ReportBlock>(),
                .. Measure is { } measure ? [new ParagraphBlock(measure)] : Array.Empty<ReportBlock>(),
            ]);
        }
    }

    /// <summary>The same, a sentence each.</summary>
    public IReadOnlyList<string> Sentences => [.. Checks.Select(effect => ItemOf(effect).Text)];

    /// <summary>The first of them in a phrase; null where none moves the result.</summary>
    public string? First => Checks is [var first, ..] && Shown(first) is [var one, ..]
        ? $"{words.Subject(first.Unknown)}. If it is {DescriptionOf(first.Unknown.Kind, one.Alternative.Row)}, "
            + (one.OtherBest(findings.Ranking) is { } other ? $"{findings.Named(other.Spot)} is the better spot" : ThenOf(one))
        : null;

    private UnknownEffect[] Checks => [.. findings.Study.Effects.Where(effect => effect.Unknown.Kind != UnknownKind.DoorState).Take(Verified)];

    private string HowClear
    {
        get
        {
            SpotScore best = findings.Ranking.Scores[0];
            if (findings.Ranking.Scores.Count == 1)
            {
                return $"There is one spot to judge. {AllPass}";
            }

            string first = $"the probability that '{best.Spot.Name}' is the best of the {findings.Ranking.Scores.Count} spots is {UncertaintyWords.Likely(findings.Call.ProbabilitiesBest[0])}";
            string others = string.Join(", ", findings.Ranking.Scores.Skip(1).Select((score, i) => (score, Likely: findings.Call.ProbabilitiesBest[i + 1]))
                .Where(pair => UncertaintyWords.Percent(pair.Likely) > 0).Select(pair => $"'{pair.score.Spot.Name}' {UncertaintyWords.Likely(pair.Likely)}"));
            return $"{(findings.Call.Rivals.Count > 0 ? $"It is close: {first}" : MapFindings.Capital(first))}{(others.Length > 0 ? $" ({others})" : "")}. {AllPass}";
        }
    }

    private string AllPass =>
        $"The probability that every seat passes at '{findings.Chosen.Spot.Name}' is {UncertaintyWords.Likely(findings.Uncertainty.ProbabilityAllPass(findings.Chosen.Budgets))}.";

    private bool Matters(AlternativeEffect one) =>
        one.OtherBest(findings.Ranking) is not null || one.SeatsLost(findings.Chosen).Count > 0 || one.SeatsGained(findings.Chosen).Count > 0;

    private string Door(UnknownEffect effect)
    {
        AlternativeEffect shut = effect.Alternatives.First(Matters);
        return $"{words.Subject(effect.Unknown)} (if it is shut, {ThenOf(shut)})";
    }

    private ListItem ItemOf(UnknownEffect effect)
    {
        string otherwise = string.Join(" ", Shown(effect).Select(one => $"If it is {Described(effect.Unknown.Kind, one.Alternative.Row)}, {ThenOf(one)}."));
        return new ListItem(
            $"{MapFindings.Capital(words.Subject(effect.Unknown))}: described as {Described(effect.Unknown.Kind, effect.Unknown.Assumed)}. {otherwise}",
            $"How: {AssumptionWords.HowToCheck(effect.Unknown)}.");
    }

    // What changes a decision; else what moves the result most.
    private AlternativeEffect[] Shown(UnknownEffect effect) => effect.Alternatives.Where(Matters).ToArray() is { Length: > 0 } decisive
        ? decisive
        : [effect.Alternatives.MaxBy(one => Math.Abs(ChangeOf(one)))!];

    private double ChangeOf(AlternativeEffect one) => one.ScoreOf(findings.Chosen.Spot.Name).WeakestHeadroomDb - findings.Chosen.WeakestHeadroomDb;

    private string ThenOf(AlternativeEffect one)
    {
        SpotScore then = one.ScoreOf(findings.Chosen.Spot.Name);
        string seats = (one.SeatsLost(findings.Chosen), one.SeatsGained(findings.Chosen)) switch
        {
            ({ Count: > 0 } lost, _) => $"{List(lost)} no longer {(lost.Count == 1 ? "passes" : "pass")} at '{findings.Chosen.Spot.Name}'",
            (_, { Count: > 0 } gained) => $"{List(gained)} {(gained.Count == 1 ? "passes" : "pass")} too",
            _ => $"the weakest seat, '{then.Weakest.Seat.Name}', is {Headroom.Words(then)} the required margin",
        };
        return one.OtherBest(findings.Ranking) is { } other ? $"{findings.Named(other.Spot)} is the better spot; {seats}" : seats;
    }

    private static string List(IReadOnlyList<string> names) => string.Join(", ", names.Select(name => $"'{name}'"));

    private string Described(UnknownKind kind, string row) => DescriptionOf(kind, row) is var words && words != row ? $"{words} ({row})" : row;

    private string DescriptionOf(UnknownKind kind, string row) => AssumptionWords.Described(findings.Loaded.Tables, kind, row);

    private string? Measure => findings.Call.Settling is { } measurement
        ? $"One measurement would tell most about which spot is better: transmit from '{measurement.Transmitter.Name}', receive {measurement.Where} on level {findings.LevelOf(measurement.LevelIndex)}."
        : null;
}
