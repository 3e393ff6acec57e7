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
