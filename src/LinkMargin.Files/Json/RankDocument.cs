using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Files.Json;

/// <summary>One spot's place in the ranking, as JSON.</summary>
/// <param name="Rank">1 is the best.</param>
/// <param name="Spot">The spot's name.</param>
/// <param name="Level">The level it is on.</param>
/// <param name="WorstSeat">The seat with the least headroom: the one that decides.</param>
/// <param name="MarginDb">That seat's margin, as it is counted on, dB.</param>
/// <param name="RequiredDb">What that seat asks for, dB.</param>
/// <param name="HeadroomDb">Margin less required at that seat, dB.</param>
/// <param name="MeanHeadroomDb">Mean headroom over all players, dB.</param>
/// <param name="SeatsPassing">How many seats have the margin they ask for, each of their players.</param>
/// <param name="Seats">How many seats there are; the players of one seat count once.</param>
/// <param name="PassingShare">The share of the play that is met, each seat by the days it is used, 0 to 1.</param>
public sealed record RankDocument(
    int Rank,
    string Spot,
    string Level,
    string WorstSeat,
    double MarginDb,
    double RequiredDb,
    double HeadroomDb,
    double MeanHeadroomDb,
    int SeatsPassing,
    int Seats,
    double PassingShare)
{
    /// <summary>How likely every seat has what it asks for at once, 0 to 1; left out where no doubt was worked out.</summary>
    public double? ProbabilityAllPass { get; init; }

    /// <summary>How likely this is the best of the spots, by its worst seat, 0 to 1; left out where no doubt was worked out.</summary>
    public double? ProbabilityBest { get; init; }

    /// <summary>Cautions about the figure of its worst seat.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>A spot's score as JSON says it.</summary>
    public static RankDocument Of(House house, SpotScore score, int rank, HouseUncertainty? uncertainty = null) => new(
        rank,
        score.Spot.Name,
        house.Levels[score.Spot.LevelIndex].Name,
        score.Worst.Seat.Name,
        score.By.MarginDb(score.Worst),
        score.Worst.RequiredDb,
        score.WorstHeadroomDb,
        score.MeanHeadroomDb,
        score.SeatsPassing,
        score.Seats,
        score.PassingShare)
    {
        ProbabilityAllPass = uncertainty?.ProbabilityAllPass(score.Budgets) ?? score.ProbabilityAllPass,
        Cautions = score.Worst.Cautions,
    };
}
