using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Houses;

/// <summary>A box that stands in a room: solid, or a shell of panels with named sides open.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LevelIndex">The level it stands on; 0 is the lowest.</param>
/// <param name="Centre">Centre of its footprint.</param>
/// <param name="SizeX">East to west before turning, metres, above 0.</param>
/// <param name="SizeY">South to north before turning, metres, above 0.</param>
/// <param name="TurnDegrees">Turned about its centre, degrees anticlockwise.</param>
/// <param name="FromMetres">Underside above the level's floor, metres.</param>
/// <param name="ToMetres">Top above the level's floor, metres.</param>
/// <param name="Material">What it is made of; for a shell, the material of each panel that has none of its own.</param>
public sealed record Fixture(
    string Name,
    int LevelIndex,
    Point2 Centre,
    double SizeX,
    double SizeY,
    double TurnDegrees,
    double FromMetres,
    double ToMetres,
    Material Material)
{
    /// <summary>Whether it is hollow: each panel crossed counts by itself, and things may stand inside.</summary>
    public bool IsShell { get; init; }

    /// <summary>Sides of a shell that have no panel.</summary>
    public BoxSides OpenSides { get; init; }

    /// <summary>Sides of a shell whose panel is not made of <see cref="Material"/>; an open side has none.</summary>
    public IReadOnlyDictionary<BoxSides, Material> SideMaterials { get; init; } = new Dictionary<BoxSides, Material>();

    /// <summary>What the panel on one side of a shell is made of; null where it is open.</summary>
    public Material? PanelOn(BoxSides side) => (OpenSides & side) != 0 ? null : SideMaterials.GetValueOrDefault(side, Material);

    /// <summary>The seat whose player's body it is part of; null for things.</summary>
    public Seat? Seat { get; init; }

    /// <summary>South-west, south-east, north-east and north-west corner of its footprint, turned as it stands.</summary>
    public IReadOnlyList<Point2> Corners()
    {
        double hx = SizeX / 2, hy = SizeY / 2;
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(TurnDegrees));
        Point2 Turned(double x, double y) => Centre + new Point2((x * cos) - (y * sin), (x * sin) + (y * cos));
        return [Turned(-hx, -hy), Turned(hx, -hy), Turned(hx, hy), Turned(-hx, hy)];
    }

    /// <summary>
    /// Whether a place on its level lies in it. With a positive slack a place a little outside counts as in, with a negative
    /// one a place just inside its faces does not.
    /// </summary>
    public bool Contains(Point2 plan, double heightMetres, double slackMetres = 0)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(TurnDegrees));
        Point2 from = plan - Centre;
        double x = (cos * from.X) + (sin * from.Y), y = (cos * from.Y) - (sin * from.X);
        return Math.Abs(x) <= (SizeX / 2) + slackMetres
            && Math.Abs(y) <= (SizeY / 2) + slackMetres
            && heightMetres >= FromMetres - slackMetres
            && heightMetres <= ToMetres + slackMetres;
    }
}

/// <summary>Sides of a box before it is turned.</summary>
[Flags]
public enum BoxSides
{
    /// <summary>No side.</summary>
    None = 0,

    /// <summary>Towards smaller x.</summary>
    West = 1,

    /// <summary>Towards larger x.</summary>
    East = 2,

    /// <summary>Towards smaller y.</summary>
    South = 4,

    /// <summary>Towards larger y.</summary>
    North = 8,

    /// <summary>The underside.</summary>
    Bottom = 16,

    /// <summary>The lid.</summary>
    Top = 32,
}
