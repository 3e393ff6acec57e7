using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Json;

/// <summary>A spot the chosen one is judged against, as JSON.</summary>
/// <param name="Spot">The spot's name.</param>
/// <param name="Level">The level it is on.</param>
/// <param name="IsNext">Whether it is the second of the ranking.</param>
/// <param name="IsBestOfItsLevel">Whether it is the best of a level other than the chosen spot's.</param>
/// <param name="LeadDb">How much more headroom the chosen spot has at its worst seat, dB.</param>
public sealed record RivalDocument(string Spot, string Level, bool IsNext, bool IsBestOfItsLevel, double LeadDb)
{
    internal static RivalDocument Of(House house, Choice choice, SpotScore rival) => new(
        rival.Spot.Name,
        house.Levels[rival.Spot.LevelIndex].Name,
        rival == choice.Next,
        choice.BestOfOtherLevels.Contains(rival),
        choice.LeadDb(rival));
}
