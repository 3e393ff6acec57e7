using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Files.Json;

/// <summary>Which spot to choose and what decides it, as JSON.</summary>
/// <param name="Spot">The spot's name.</param>
/// <param name="Level">The level it is on.</param>
/// <param name="PassesEverySeat">Whether every seat has the margin it asks for there.</param>
/// <param name="AheadOf">The spots it is judged against.</param>
/// <param name="Levels">The best spot of each level, and what it costs; the chosen one's level first.</param>
public sealed record ChoiceDocument(
    string Spot,
    string Level,
    bool PassesEverySeat,
    IReadOnlyList<RivalDocument> AheadOf,
    IReadOnlyList<LevelChoiceDocument> Levels)
{
    /// <summary>Spots that are too close to this one to call; left out where no doubt was worked out.</summary>
    public IReadOnlyList<string>? TooCloseToCall { get; init; }

    /// <summary>The reading that would tell most about which of them is better; left out where the call is clear.</summary>
    public NextMeasurementDocument? SettledBy { get; init; }

    internal static ChoiceDocument Of(House house, Choice choice, CloseCall? call) => new(
        choice.Best.Spot.Name,
        house.Levels[choice.Best.Spot.LevelIndex].Name,
        choice.Best.PassesAll,
        [.. choice.Rivals.Select(rival => RivalDocument.Of(house, choice, rival))],
        [.. choice.BestOfLevels.Select(score => LevelChoiceDocument.Of(house, choice, score))])
    {
        TooCloseToCall = call is null ? null : [.. call.Rivals.Select(rival => rival.Spot.Name)],
        SettledBy = call?.Settling is { } measurement ? NextMeasurementDocument.Of(house, measurement) : null,
    };
}
