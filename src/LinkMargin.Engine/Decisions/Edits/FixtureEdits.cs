using LinkMargin.Engine.Geometry;
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

/// <summary>
/// A side of a hollow fixture with a panel of something else. In a house file: the side opened, and a thin fixture put there.
/// </summary>
/// <param name="Name">The fixture's name.</param>
/// <param name="Side">The one side.</param>
/// <param name="Material">What the new panel is of.</param>
public sealed record SwapFixtureSide(string Name, BoxSides Side, Material Material) : HouseEdit
{
    /// <summary>Thickness of the new panel, metres: common practice for a sheet or a pane.</summary>
    public const double PanelMetres = 0.005;

    /// <inheritdoc/>
    public override House ApplyTo(House house)
    {
        House open = new OpenFixtureSide(Name, Side).ApplyTo(house);
        Fixture fixture = open.Fixtures.First(f => f.Name == Name);
        return open with { Fixtures = [.. open.Fixtures, Panel(fixture)] };
    }

    private Fixture Panel(Fixture fixture)
    {
        Fixture panel = fixture with
        {
            Name = $"{Side.ToString().ToLowerInvariant()} panel of {fixture.Name}",
            Material = Material,
            IsShell = false,
            OpenSides = BoxSides.None,
        };
        const double Half = PanelMetres / 2;
        return Side switch
        {
            BoxSides.West => Upright(panel, new Point2(-(fixture.SizeX / 2) + Half, 0), PanelMetres, fixture.SizeY),
            BoxSides.East => Upright(panel, new Point2((fixture.SizeX / 2) - Half, 0), PanelMetres, fixture.SizeY),
            BoxSides.South => Upright(panel, new Point2(0, -(fixture.SizeY / 2) + Half), fixture.SizeX, PanelMetres),
            BoxSides.North => Upright(panel, new Point2(0, (fixture.SizeY / 2) - Half), fixture.SizeX, PanelMetres),
            BoxSides.Top => panel with { FromMetres = fixture.ToMetres - PanelMetres },
            BoxSides.Bottom => panel with { ToMetres = fixture.FromMetres + PanelMetres },
            _ => throw new ArgumentException($"'{Side}' is not one side.", nameof(fixture)),
        };
    }

    private static Fixture Upright(Fixture panel, Point2 off, double sizeX, double sizeY)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(panel.TurnDegrees));
        Point2 turned = new((cos * off.X) - (sin * off.Y), (sin * off.X) + (cos * off.Y));
        return panel with { Centre = panel.Centre + turned, SizeX = sizeX, SizeY = sizeY };
    }
}
