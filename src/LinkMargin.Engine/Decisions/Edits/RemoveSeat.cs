using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Edits;

/// <summary>A seat taken out of the question, as by a controller on a cable.</summary>
/// <param name="Name">Its name.</param>
public sealed record RemoveSeat(string Name) : HouseEdit
{
    /// <inheritdoc/>
    public override House ApplyTo(House house)
    {
        Seat[] left = [.. house.Seats.Where(seat => seat.Name != Name)];
        return left.Length == house.Seats.Count
            ? throw new ArgumentException($"The house has no seat '{Name}'.", nameof(house))
            : house with { Seats = left };
    }
}
