using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Edits;

/// <summary>A seat turned.</summary>
/// <param name="Name">Its name.</param>
/// <param name="FacingDegrees">Where the player then looks, degrees anticlockwise from the x axis, 0 to below 360.</param>
public sealed record TurnSeat(string Name, double FacingDegrees) : HouseEdit
{
    /// <inheritdoc/>
    public override House ApplyTo(House house) => house with
    {
        Seats = Changed(
            house.Seats, seat => seat.Name == Name, seat => seat with { FacingDegrees = FacingDegrees, Faces = null }, $"seat '{Name}'"),
    };
}
