using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>One remedy or two together, computed.</summary>
/// <param name="Remedies">One or two.</param>
/// <param name="After">The spot's score then.</param>
/// <param name="GainDb">How much more headroom its weakest seat then has, dB; the weakest seat may be another then.</param>
/// <param name="GainAtSeatDb">The same at the seat that was weakest before, dB; null where that seat is on a cable.</param>
public sealed record RemedyResult(IReadOnlyList<Remedy> Remedies, SpotScore After, double GainDb, double? GainAtSeatDb)
{
    /// <summary>Probability that the seat that was weakest before then passes, 0 to 1; null where not computed or the seat is on a cable.</summary>
    public double? ProbabilityAtSeat { get; init; }

    /// <summary>Other variants of a single remedy, the greatest gain first; each has the spot's score then, like this one.</summary>
    public IReadOnlyList<RemedyResult> Alternatives { get; init; } = [];

    /// <summary>The greatest effort of any of them.</summary>
    public Effort Effort => Remedies.Max(remedy => remedy.Effort);
}

/// <summary>How much some remedies could gain.</summary>
/// <param name="Remedies">One or two.</param>
/// <param name="MostGainDb">The weakest seat's headroom gains no more than this, dB.</param>
/// <param name="ByMedian">The spot's score by the median then; null where they are certain to gain too little, so that not every seat was computed.</param>
/// <param name="Model">The model of the edited house; null in the same case.</param>
internal sealed record RemedyOutlook(IReadOnlyList<Remedy> Remedies, double MostGainDb, SpotScore? ByMedian, LinkModel? Model)
{
    /// <summary>Whether they could gain enough to be reported.</summary>
    public bool CouldHelp => ByMedian is not null;
}
