using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Files.Json;

/// <summary>One link's budget, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Spot">The spot's name.</param>
/// <param name="Seat">The seat's name.</param>
/// <param name="Occupied">Other seats with people who stand in the way.</param>
/// <param name="DistanceM">Straight distance, metres.</param>
/// <param name="FrequencyMHz">The frequency whose free-space loss is the mean over the band, MHz.</param>
/// <param name="Paths">The paths, strongest first.</param>
/// <param name="PathLossDb">Loss of all paths together, dB.</param>
/// <param name="StrongestOverRestDb">Power of the strongest path over that of all others, dB; left out where it is alone.</param>
/// <param name="DelaySpreadNs">Root mean square spread of the paths' delays, nanoseconds.</param>
/// <param name="Directions">Controller to console, then console to controller.</param>
/// <param name="MarginDb">The worse of the two directions' margins, dB.</param>
/// <param name="RequiredDb">What the seat asks for, dB.</param>
/// <param name="HeadroomDb">Margin less required, dB.</param>
/// <param name="Meets">Whether the margin is at least what the seat asks for.</param>
public sealed record BudgetDocument(
    string House,
    string Spot,
    string Seat,
    IReadOnlyList<string> Occupied,
    double DistanceM,
    double FrequencyMHz,
    IReadOnlyList<PathDocument> Paths,
    double PathLossDb,
    double? StrongestOverRestDb,
    double DelaySpreadNs,
    IReadOnlyList<DirectionDocument> Directions,
    double MarginDb,
    double RequiredDb,
    double HeadroomDb,
    bool Meets)
{
    /// <summary>What is different from the house file; left out where nothing is.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>A budget as JSON says it.</summary>
    public static BudgetDocument Of(House house, LinkBudget budget) => new(
        house.Name,
        budget.Spot.Name,
        budget.Seat.Name,
        [.. budget.Occupied.Select(seat => seat.Name)],
        budget.DistanceMetres,
        budget.Frequency.Megahertz,
        [.. budget.Paths.Select(path => PathDocument.Of(house, budget, path))],
        budget.PathLossDb,
        budget.StrongestOverRestDb,
        budget.DelaySpreadNanoseconds,
        [.. budget.Directions.Select(DirectionDocument.Of)],
        budget.MarginDb,
        budget.RequiredDb,
        budget.HeadroomDb,
        budget.Meets);
}
