using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Edits;

/// <summary>A side of a hollow fixture without its panel: a rack's door left open, its back taken off.</summary>
/// <param name="Name">The fixture's name.</param>
/// <param name="Side">The side.</param>
public sealed record OpenFixtureSide(string Name, BoxSides Side) : HouseEdit
{
    /// <inheritdoc/>
    public override House ApplyTo(House house) => house with
    {
        Fixtures = Changed(
            house.Fixtures,
            fixture => fixture.IsShell && fixture.Name == Name,
            fixture => fixture with { OpenSides = fixture.OpenSides | Side },
            $"hollow fixture '{Name}'"),
    };
}

/// <summary>A fixture taken away. Seats that faced it keep their direction; what stood in it stays where it was.</summary>
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

/// <summary>One side of a hollow fixture with a panel of another material, as with the key <c>sides</c> of a house file.</summary>
/// <param name="Name">The fixture's name.</param>
/// <param name="Side">The one side.</param>
/// <param name="Material">What the new panel is made of.</param>
public sealed record SwapFixtureSide(string Name, BoxSides Side, Material Material) : HouseEdit
{
    /// <inheritdoc/>
    public override House ApplyTo(House house) => house with
    {
        Fixtures = Changed(
            house.Fixtures,
            fixture => fixture.IsShell && fixture.Name == Name,
            fixture => fixture with
            {
                OpenSides = fixture.OpenSides & ~Side,
                SideMaterials = new Dictionary<BoxSides, Material>(fixture.SideMaterials) { [Side] = Material },
            },
            $"hollow fixture '{Name}'"),
    };
}
