namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>What would help a spot.</summary>
/// <param name="Before">How it serves its seats as things are.</param>
/// <param name="Alone">Remedies that help, the greatest gain first.</param>
/// <param name="Pairs">Two together, where one is not enough and two gain more; the greatest gain first.</param>
/// <param name="Tried">How many remedies were worked out.</param>
public sealed record ImproveResult(SpotScore Before, IReadOnlyList<RemedyResult> Alone, IReadOnlyList<RemedyResult> Pairs, int Tried)
{
    /// <summary>Whether every seat is met, as things are or with something told here.</summary>
    public bool CanMeetAll => Before.MeetsAll || Alone.Any(r => r.After.MeetsAll) || Pairs.Any(r => r.After.MeetsAll);
}
