using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Sensitivity;

namespace LinkMargin.Files.Json;

/// <summary>One assumption of a house file and how alternatives would change a link's margin, as JSON.</summary>
/// <param name="Kind"><c>walls</c>, <c>openings</c>, <c>fixtures</c>, <c>floor</c> or <c>doorState</c>.</param>
/// <param name="Assumed">The table row that the house file names; for a door, <c>open</c>.</param>
/// <param name="SpreadDb">Change of the median margin for one standard deviation of the losses as described, dB.</param>
/// <param name="Alternatives">What could be true instead.</param>
public sealed record AssumptionDocument(string Kind, string Assumed, double SpreadDb, IReadOnlyList<AssumptionAlternativeDocument> Alternatives)
{
    /// <summary>The wall, opening or fixture; for a floor, the level below; omitted if it is about everything of one row.</summary>
    public string? Name { get; init; }

    /// <summary>The level it is on; omitted if it is about every level.</summary>
    public string? Level { get; init; }

    /// <summary>The findings of a study about a link.</summary>
    public static IReadOnlyList<AssumptionDocument> Of(House house, SensitivityStudy study, LinkBudget link)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(link);
        return [.. study.Effects.Select(effect => Of(house, study, effect, link))];
    }

    private static AssumptionDocument Of(House house, SensitivityStudy study, UnknownEffect effect, LinkBudget link) => new(
        WordFor(effect.Unknown.Kind),
        effect.Unknown.Assumed,
        effect.SpreadDb(link),
        [.. effect.Alternatives.Select(one => AssumptionAlternativeDocument.Of(study, one, link))])
    {
        Name = effect.Unknown.Name,
        Level = effect.Unknown.LevelIndex is int level ? house.Levels[level].Name : null,
    };

    private static string WordFor(UnknownKind kind) => kind switch
    {
        UnknownKind.Walls => "walls",
        UnknownKind.Openings => "openings",
        UnknownKind.Fixtures => "fixtures",
        UnknownKind.Floor => "floor",
        UnknownKind.DoorState => "doorState",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a known kind of assumption."),
    };
}

/// <summary>What could be true in place of an assumption, as JSON; every value is recomputed.</summary>
/// <param name="Instead">The table row; for a door, <c>shut</c>.</param>
/// <param name="ChangeDb">Change of the margin to count on, dB.</param>
/// <param name="MarginAtConfidenceDb">The margin to count on then, dB.</param>
/// <param name="Passes">Whether the seat then passes.</param>
/// <param name="BestSpot">The best spot then, by the weakest seat of each.</param>
/// <param name="SeatsLost">Seats that pass at the best spot as described, but not then.</param>
/// <param name="SeatsGained">Seats that do not pass there as described, but do then.</param>
public sealed record AssumptionAlternativeDocument(
    string Instead,
    double ChangeDb,
    double MarginAtConfidenceDb,
    bool Passes,
    string BestSpot,
    IReadOnlyList<string> SeatsLost,
    IReadOnlyList<string> SeatsGained)
{
    internal static AssumptionAlternativeDocument Of(SensitivityStudy study, AlternativeEffect one, LinkBudget link)
    {
        double then = one.MarginDb(link);
        return new(
            one.Alternative.Row,
            then - study.Uncertainty.MarginAtConfidenceDb(link),
            then,
            then >= link.RequiredDb,
            one.Ranking.Scores[0].Spot.Name,
            one.SeatsLost(study.Ranking.Scores[0]),
            one.SeatsGained(study.Ranking.Scores[0]));
    }
}
