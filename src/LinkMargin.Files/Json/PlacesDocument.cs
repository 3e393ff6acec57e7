using System.Text.Json.Serialization;
using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Json;

/// <summary>The best places for a console, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Occupied">Seats with people who obstruct other links.</param>
/// <param name="Candidates">How many places were considered.</param>
/// <param name="ComputedExactly">How many of them were computed exactly, like a spot.</param>
/// <param name="Places">The best places that differ clearly, best first.</param>
/// <param name="BestSpot">The best spot in the house file; omitted if it has none.</param>
/// <param name="Picture">The map of the choice.</param>
public sealed record PlacesDocument(
    string House,
    IReadOnlyList<string> Occupied,
    int Candidates,
    int ComputedExactly,
    IReadOnlyList<PlaceDocument> Places,
    RankDocument? BestSpot,
    string Picture)
{
    /// <summary>Share of cases in which a margin in this document is reached, 0 to 1.</summary>
    public required double Confidence { get; init; }

    /// <summary>What differs from the house file; omitted if nothing does.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>How many measurements the losses were fitted to; omitted for table losses.</summary>
    public int? FittedToMeasurements { get; init; }
}

/// <summary>One place found for a console, as JSON.</summary>
/// <param name="Place">Its name in this document.</param>
/// <param name="Where">The zone or the room it is in.</param>
/// <param name="Level">The level it is on.</param>
/// <param name="XM">East, metres.</param>
/// <param name="YM">North, metres.</param>
/// <param name="HeightM">Above the level's floor, metres.</param>
/// <param name="WeakestSeat">The seat with the least headroom.</param>
/// <param name="MarginAtConfidenceDb">That seat's margin to count on, dB.</param>
/// <param name="RequiredDb">What that seat requires, dB.</param>
/// <param name="HeadroomDb">Margin less required margin at that seat, dB.</param>
/// <param name="SeatsPassing">How many seats pass.</param>
/// <param name="Seats">How many seats there are.</param>
/// <param name="PassingShare">The share of the playing time at seats that pass, 0 to 1.</param>
public sealed record PlaceDocument(
    string Place,
    string Where,
    string Level,
    [property: JsonPropertyName("xM")] double XM,
    [property: JsonPropertyName("yM")] double YM,
    double HeightM,
    string WeakestSeat,
    double MarginAtConfidenceDb,
    double RequiredDb,
    double HeadroomDb,
    int SeatsPassing,
    int Seats,
    double PassingShare)
{
    /// <summary>Probability that every seat passes at once, 0 to 1; omitted if no uncertainty was computed.</summary>
    public double? ProbabilityAllPass { get; init; }

    /// <summary>Cautions about the margin of its weakest seat.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Its cable cost; omitted if the house file has no displays.</summary>
    public CablesDocument? Cables { get; init; }

    /// <summary>A place as a document.</summary>
    public static PlaceDocument Of(House house, PlacedSpot placed) => new(
        placed.Score.Spot.Name,
        placed.Place.Where,
        house.Levels[placed.Place.LevelIndex].Name,
        placed.Place.Plan.X,
        placed.Place.Plan.Y,
        placed.Place.HeightMetres,
        placed.Score.Weakest.Seat.Name,
        placed.Score.By.MarginDb(placed.Score.Weakest),
        placed.Score.Weakest.RequiredDb,
        placed.Score.WeakestHeadroomDb,
        placed.Score.SeatsPassing,
        placed.Score.Seats,
        placed.Score.PassingShare)
    {
        ProbabilityAllPass = placed.Score.ProbabilityAllPass,
        Cautions = placed.Score.Weakest.Cautions,
    };
}
