using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Edits;

/// <summary>A fixture taken away. Who looked at it looks the same way on; what stood in it stays where it was.</summary>
/// <param name="Name">Its name.</param>
public sealed record RemoveFixture(string Name) : HouseEdit
{
    /// <inheritdoc/>
    public override House ApplyTo(House house)
    {
        Fixture[] left = [.. house.Fixtures.Where(fixture => fixture.Name != Name)];
        return left.Length == house.Fixtures.Count
            ? throw new ArgumentException($"The house has no fixture '{Name}'.", nameof(house))
            : house with
            {
                Fixtures = left,
                Seats = [.. house.Seats.Select(seat => seat.Faces == Name ? seat with { Faces = null } : seat)],
            };
    }
}
