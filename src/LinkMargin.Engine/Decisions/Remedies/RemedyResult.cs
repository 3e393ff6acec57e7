namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>One remedy or two together, worked out.</summary>
/// <param name="Remedies">One or two.</param>
/// <param name="After">How the spot then serves its seats.</param>
/// <param name="GainDb">How much more headroom its worst seat then has, dB; the worst seat may be another then.</param>
/// <param name="GainAtSeatDb">The same at the seat that was worst before, dB; null where that seat is on a cable.</param>
public sealed record RemedyResult(IReadOnlyList<Remedy> Remedies, SpotScore After, double GainDb, double? GainAtSeatDb)
{
    /// <summary>How likely the seat that was worst before then has what it asks for, 0 to 1; null where that was not worked out or it is on a cable.</summary>
    public double? ProbabilityAtSeat { get; init; }

    /// <summary>Other variants of a single remedy, the greatest gain first; each says how well off the spot then is, like this one.</summary>
    public IReadOnlyList<RemedyResult> Alternatives { get; init; } = [];

    /// <summary>The most that any of them asks of somebody.</summary>
    public Effort Effort => Remedies.Max(remedy => remedy.Effort);
}
