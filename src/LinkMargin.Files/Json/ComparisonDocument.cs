using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Files.Json;

/// <summary>Every seat with every spot, and the ranking, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Occupied">Seats with people who obstruct the other links.</param>
/// <param name="Ranking">The spots, best first.</param>
/// <param name="Choice">Which to choose.</param>
/// <param name="SeatsNeverPassing">Seats below their required margin at every spot.</param>
/// <param name="InUse">Consoles in use at once, each with the seats that play it; empty if no seat names one.</param>
/// <param name="Links">The budget of every link, spots in the order of the ranking, then seats in the house's order.</param>
public sealed record ComparisonDocument(
    string House,
    IReadOnlyList<string> Occupied,
    IReadOnlyList<RankDocument> Ranking,
    ChoiceDocument Choice,
    IReadOnlyList<string> SeatsNeverPassing,
    IReadOnlyList<RankDocument> InUse,
    IReadOnlyList<BudgetDocument> Links)
{
    /// <summary>What differs from the house file; omitted if nothing does.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>How many measurements the losses were fitted to; omitted for table losses.</summary>
    public int? FittedToMeasurements { get; init; }

    /// <summary>The picture of every seat with every spot; omitted if not requested.</summary>
    public string? Picture { get; init; }

    /// <summary>The margins as CSV; omitted if not requested.</summary>
    public string? Csv { get; init; }

    /// <summary>The same comparison for the house as written in its file; omitted if nothing differs.</summary>
    public ComparisonDocument? AsWritten { get; init; }

    /// <summary>The same with each spot's cable cost.</summary>
    /// <param name="runs">The runs of each spot in the order of the ranking; empty if the house file has no displays.</param>
    public ComparisonDocument WithCables(IReadOnlyList<SpotRuns> runs)
    {
        ArgumentNullException.ThrowIfNull(runs);
        return runs.Count == 0 ? this : this with { Ranking = [.. Ranking.Zip(runs, (rank, cables) => rank with { Cables = CablesDocument.Of(cables) })] };
    }

    /// <summary>A ranking of at least one spot as a document.</summary>
    /// <param name="house">The house.</param>
    /// <param name="ranking">Its ranking.</param>
    /// <param name="occupied">The seats with people who obstruct other links.</param>
    /// <param name="uncertainty">The uncertainty of its links; null if it was not computed.</param>
    /// <param name="call">Whether the first spot is clearly the best; null if that was not computed.</param>
    public static ComparisonDocument Of(House house, Ranking ranking, IReadOnlyList<Seat> occupied, HouseUncertainty? uncertainty = null, CloseCall? call = null) => new(
        house.Name,
        [.. occupied.Select(seat => seat.Name)],
        [.. ranking.Scores.Select((score, i) => RankDocument.Of(house, score, i + 1, uncertainty) with { ProbabilityBest = call?.ProbabilitiesBest[i] })],
        ChoiceDocument.Of(house, Engine.Decisions.Choice.Of(ranking), call),
        [.. ranking.SeatsNeverPassing.Select(seat => seat.Name)],
        [.. ranking.InUse.Select((score, i) => RankDocument.Of(house, score, i + 1, uncertainty))],
        [.. ranking.Scores.SelectMany(score => score.Budgets).Select(budget => BudgetDocument.Of(house, budget, uncertainty))]);
}

/// <summary>Which spot to choose and what decides it, as JSON.</summary>
/// <param name="Spot">The spot's name.</param>
/// <param name="Level">The level it is on.</param>
/// <param name="PassesEverySeat">Whether every seat passes there.</param>
/// <param name="AheadOf">The spots it is compared with.</param>
/// <param name="Levels">The best spot of each level, and the cost of that choice; the chosen spot's level first.</param>
public sealed record ChoiceDocument(
    string Spot,
    string Level,
    bool PassesEverySeat,
    IReadOnlyList<RivalDocument> AheadOf,
    IReadOnlyList<LevelChoiceDocument> Levels)
{
    /// <summary>Spots that are too close to this one to tell apart; omitted if no uncertainty was computed.</summary>
    public IReadOnlyList<string>? TooCloseToCall { get; init; }

    /// <summary>The measurement that would separate them best; omitted if the choice is clear.</summary>
    public NextMeasurementDocument? DecisiveMeasurement { get; init; }

    internal static ChoiceDocument Of(House house, Choice choice, CloseCall? call) => new(
        choice.Best.Spot.Name,
        house.Levels[choice.Best.Spot.LevelIndex].Name,
        choice.Best.PassesAll,
        [.. choice.Rivals.Select(rival => RivalDocument.Of(house, choice, rival))],
        [.. choice.BestOfLevels.Select(score => LevelChoiceDocument.Of(house, choice, score))])
    {
        TooCloseToCall = call is null ? null : [.. call.Rivals.Select(rival => rival.Spot.Name)],
        DecisiveMeasurement = call?.Settling is { } measurement ? NextMeasurementDocument.Of(house, measurement) : null,
    };
}

/// <summary>One spot's place in the ranking, as JSON.</summary>
/// <param name="Rank">1 is the best.</param>
/// <param name="Spot">The spot's name.</param>
/// <param name="Level">The level it is on.</param>
/// <param name="WeakestSeat">The seat with the least headroom: the one that decides.</param>
/// <param name="MarginAtConfidenceDb">That seat's margin to count on, dB.</param>
/// <param name="RequiredDb">What that seat requires, dB.</param>
/// <param name="HeadroomDb">Margin less required margin at that seat, dB.</param>
/// <param name="MeanHeadroomDb">Mean headroom over all players, dB.</param>
/// <param name="SeatsPassing">How many seats pass, counting a seat only if all its players pass.</param>
/// <param name="Seats">How many seats there are; the players of one seat count once.</param>
/// <param name="PassingShare">The share of the playing time at seats that pass, weighted by the days each is used, 0 to 1.</param>
public sealed record RankDocument(
    int Rank,
    string Spot,
    string Level,
    string WeakestSeat,
    double MarginAtConfidenceDb,
    double RequiredDb,
    double HeadroomDb,
    double MeanHeadroomDb,
    int SeatsPassing,
    int Seats,
    double PassingShare)
{
    /// <summary>Its cable cost; omitted if the house file has no displays.</summary>
    public CablesDocument? Cables { get; init; }

    /// <summary>Probability that every seat passes at once, 0 to 1; omitted if no uncertainty was computed.</summary>
    public double? ProbabilityAllPass { get; init; }

    /// <summary>Probability that this is the best spot, by its weakest seat, 0 to 1; omitted if no uncertainty was computed.</summary>
    public double? ProbabilityBest { get; init; }

    /// <summary>Cautions about the margin of its weakest seat.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>A spot's score as a document.</summary>
    public static RankDocument Of(House house, SpotScore score, int rank, HouseUncertainty? uncertainty = null) => new(
        rank,
        score.Spot.Name,
        house.Levels[score.Spot.LevelIndex].Name,
        score.Weakest.Seat.Name,
        score.By.MarginDb(score.Weakest),
        score.Weakest.RequiredDb,
        score.WeakestHeadroomDb,
        score.MeanHeadroomDb,
        score.SeatsPassing,
        score.Seats,
        score.PassingShare)
    {
        ProbabilityAllPass = uncertainty?.ProbabilityAllPass(score.Budgets) ?? score.ProbabilityAllPass,
        Cautions = score.Weakest.Cautions,
    };
}

/// <summary>A spot the chosen one is compared with, as JSON.</summary>
/// <param name="Spot">The spot's name.</param>
/// <param name="Level">The level it is on.</param>
/// <param name="IsNext">Whether it is second in the ranking.</param>
/// <param name="IsBestOfItsLevel">Whether it is the best of a level other than the chosen spot's.</param>
/// <param name="LeadDb">How much more headroom the chosen spot has at its weakest seat, dB.</param>
public sealed record RivalDocument(string Spot, string Level, bool IsNext, bool IsBestOfItsLevel, double LeadDb)
{
    internal static RivalDocument Of(House house, Choice choice, SpotScore rival) => new(
        rival.Spot.Name,
        house.Levels[rival.Spot.LevelIndex].Name,
        rival == choice.Next,
        choice.BestOfOtherLevels.Contains(rival),
        choice.LeadDb(rival));
}

/// <summary>The best spot of one level, and the cost of choosing that level, as JSON.</summary>
/// <param name="Level">The level's name.</param>
/// <param name="Spot">Its best spot.</param>
/// <param name="CostDb">How much less headroom the weakest seat has than at the chosen spot, dB; 0 for the chosen spot itself.</param>
/// <param name="SeatsPassing">How many seats pass.</param>
/// <param name="Seats">How many seats there are.</param>
/// <param name="SeatsLost">Seats that pass at the chosen spot but not here.</param>
public sealed record LevelChoiceDocument(string Level, string Spot, double CostDb, int SeatsPassing, int Seats, IReadOnlyList<string> SeatsLost)
{
    internal static LevelChoiceDocument Of(House house, Choice choice, SpotScore score) => new(
        house.Levels[score.Spot.LevelIndex].Name, score.Spot.Name, choice.LeadDb(score), score.SeatsPassing, score.Seats, choice.SeatsLost(score));
}
