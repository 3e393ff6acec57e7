using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Files.Json;

/// <summary>Every seat with every spot, and the ranking, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Occupied">Seats with people who stand in the way of the others' links.</param>
/// <param name="Ranking">The spots, best first.</param>
/// <param name="Choice">Which to choose.</param>
/// <param name="SeatsNeverPassing">Seats below their required margin at every spot.</param>
/// <param name="InUse">Consoles in use at once, each by the seats that say they play it; empty where no seat does.</param>
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
    /// <summary>What is different from the house file; left out where nothing is.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>How many readings the losses were fitted to; left out where they are the tables'.</summary>
    public int? FittedToMeasurements { get; init; }

    /// <summary>The picture of every seat with every spot; left out where none was asked for.</summary>
    public string? Picture { get; init; }

    /// <summary>The same comparison of the house as its file has it; left out where nothing is different.</summary>
    public ComparisonDocument? AsWritten { get; init; }

    /// <summary>A ranking of at least one spot as JSON says it.</summary>
    /// <param name="house">The house.</param>
    /// <param name="ranking">Its ranking.</param>
    /// <param name="occupied">The seats with people who stand in the way.</param>
    /// <param name="uncertainty">How sure its links are; null where that was not worked out.</param>
    /// <param name="call">Whether the first spot can be told from the others; null where that was not worked out.</param>
    public static ComparisonDocument Of(House house, Ranking ranking, IReadOnlyList<Seat> occupied, HouseUncertainty? uncertainty = null, CloseCall? call = null) => new(
        house.Name,
        [.. occupied.Select(seat => seat.Name)],
        [.. ranking.Scores.Select((score, i) => RankDocument.Of(house, score, i + 1, uncertainty) with { ProbabilityBest = call?.ProbabilitiesBest[i] })],
        ChoiceDocument.Of(house, Engine.Decisions.Choice.Of(ranking), call),
        [.. ranking.SeatsNeverPassing.Select(seat => seat.Name)],
        [.. ranking.InUse.Select((score, i) => RankDocument.Of(house, score, i + 1, uncertainty))],
        [.. ranking.Scores.SelectMany(score => score.Budgets).Select(budget => BudgetDocument.Of(house, budget, uncertainty))]);
}
