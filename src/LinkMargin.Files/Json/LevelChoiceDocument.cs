using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Json;

/// <summary>The best spot of one level, and what choosing that level costs, as JSON.</summary>
/// <param name="Level">The level's name.</param>
/// <param name="Spot">Its best spot.</param>
/// <param name="CostDb">How much less headroom the worst seat has than at the chosen spot, dB; 0 for the chosen spot itself.</param>
/// <param name="SeatsPassing">How many seats have the margin they ask for.</param>
/// <param name="Seats">How many seats there are.</param>
/// <param name="SeatsLost">Seats that are met at the chosen spot but not here.</param>
public sealed record LevelChoiceDocument(string Level, string Spot, double CostDb, int SeatsPassing, int Seats, IReadOnlyList<string> SeatsLost)
{
    internal static LevelChoiceDocument Of(House house, Choice choice, SpotScore score) => new(
        house.Levels[score.Spot.LevelIndex].Name, score.Spot.Name, choice.LeadDb(score), score.SeatsPassing, score.Seats, choice.SeatsLost(score));
}
