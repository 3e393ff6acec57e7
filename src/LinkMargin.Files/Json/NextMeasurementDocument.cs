using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Files.Json;

/// <summary>A reading worth taking, as JSON.</summary>
/// <param name="Transmitter">The spot to send from.</param>
/// <param name="Level">The level to stand on.</param>
/// <param name="Where">The seat to stand at, or the room.</param>
/// <param name="XM">Metres east.</param>
/// <param name="YM">Metres north.</param>
/// <param name="HeightM">How high to hold the device over the floor, metres.</param>
/// <param name="UncertaintyLeft">Share of the doubt that is left after this one and those before it, 0 to 1.</param>
public sealed record NextMeasurementDocument(
    string Transmitter, string Level, string Where, double XM, double YM, double HeightM, double UncertaintyLeft)
{
    /// <summary>A reading as a document.</summary>
    public static NextMeasurementDocument Of(House house, NextMeasurement next)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(next);
        return new(
            next.Transmitter.Name, house.Levels[next.LevelIndex].Name, next.Where, next.Plan.X, next.Plan.Y, next.HeightMetres, next.UncertaintyLeft);
    }
}
