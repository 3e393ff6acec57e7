using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;

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
/// <param name="TableMedianDb">The worse of the two directions' margins with every loss at its table's median, dB: the sum of the lines.</param>
/// <param name="RequiredDb">What the seat asks for, dB.</param>
/// <param name="HeadroomDb">The margin to count on less required, dB; the median where no doubt was worked out.</param>
/// <param name="Meets">Whether that margin is at least what the seat asks for.</param>
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
    double TableMedianDb,
    double RequiredDb,
    double HeadroomDb,
    bool Meets)
{
    /// <summary>What is different from the house file; left out where nothing is.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>How many readings the losses were fitted to; left out where they are the tables'.</summary>
    public int? FittedToMeasurements { get; init; }

    /// <summary>The median margin over the drawn houses, dB; left out, as all below, where no doubt was worked out.</summary>
    public double? MedianDb { get; init; }

    /// <summary>The margin to count on, dB.</summary>
    public double? MarginAtConfidenceDb { get; init; }

    /// <summary>How often there is at least so much, 0 to 1.</summary>
    public double? Confidence { get; init; }

    /// <summary>One standard deviation of the margin, dB.</summary>
    public double? SpreadDb { get; init; }

    /// <summary>How likely the seat has what it asks for, 0 to 1.</summary>
    public double? ProbabilityPasses { get; init; }

    /// <summary>Cautions of the paths that bring a tenth or more of the power; those of the others stand at each path.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>A budget and how sure it is, as JSON says it.</summary>
    public static BudgetDocument Of(House house, LinkBudget budget, HouseUncertainty? uncertainty)
    {
        BudgetDocument plain = Of(house, budget);
        return uncertainty is null ? plain : plain with
        {
            HeadroomDb = uncertainty.AtConfidence.HeadroomDb(budget),
            Meets = uncertainty.AtConfidence.Meets(budget),
            MedianDb = uncertainty.With(budget).MedianDb,
            MarginAtConfidenceDb = uncertainty.MarginAtConfidenceDb(budget),
            Confidence = uncertainty.Confidence,
            SpreadDb = uncertainty.With(budget).SpreadDb,
            ProbabilityPasses = uncertainty.ProbabilityPasses(budget),
        };
    }

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
        budget.Meets)
    {
        Cautions = budget.Cautions,
    };
}
