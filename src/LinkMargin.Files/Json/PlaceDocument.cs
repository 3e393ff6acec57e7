using System.Text.Json.Serialization;
using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Json;

/// <summary>One place found for a console, as JSON.</summary>
/// <param name="Place">What it is called here.</param>
/// <param name="Where">The zone or the room it is in.</param>
/// <param name="Level">The level it is on.</param>
/// <param name="XM">East, metres.</param>
/// <param name="YM">North, metres.</param>
/// <param name="HeightM">Above the level's floor, metres.</param>
/// <param name="WorstSeat">The seat with the least headroom.</param>
/// <param name="MarginDb">That seat's margin to count on, dB.</param>
/// <param name="RequiredDb">What that seat asks for, dB.</param>
/// <param name="HeadroomDb">Margin less required at that seat, dB.</param>
/// <param name="SeatsPassing">How many seats have the margin they ask for.</param>
/// <param name="Seats">How many seats there are.</param>
/// <param name="PassingShare">The share of the play that is met, 0 to 1.</param>
public sealed record PlaceDocument(
    string Place,
    string Where,
    string Level,
    [property: JsonPropertyName("xM")] double XM,
    [property: JsonPropertyName("yM")] double YM,
    double HeightM,
    string WorstSeat,
    double MarginDb,
    double RequiredDb,
    double HeadroomDb,
    int SeatsPassing,
    int Seats,
    double PassingShare)
{
    /// <summary>How likely every seat has what it asks for at once, 0 to 1; left out where no doubt was worked out.</summary>
    public double? ProbabilityAllPass { get; init; }

    /// <summary>Cautions about the figure of its worst seat.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>A place as JSON says it.</summary>
    public static PlaceDocument Of(House house, PlacedSpot placed) => new(
        placed.Score.Spot.Name,
        placed.Place.Where,
        house.Levels[placed.Place.LevelIndex].Name,
        placed.Place.Plan.X,
        placed.Place.Plan.Y,
        placed.Place.HeightMetres,
        placed.Score.Worst.Seat.Name,
        placed.Score.By.MarginDb(placed.Score.Worst),
        placed.Score.Worst.RequiredDb,
        placed.Score.WorstHeadroomDb,
        placed.Score.SeatsPassing,
        placed.Score.Seats,
        placed.Score.PassingShare)
    {
        ProbabilityAllPass = placed.Score.ProbabilityAllPass,
        Cautions = placed.Score.Worst.Cautions,
    };
}
