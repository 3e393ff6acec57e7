using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Houses;

/// <summary>One storey.</summary>
/// <param name="Name">Its name.</param>
/// <param name="ElevationMetres">Its finished floor above the lowest level's, metres.</param>
/// <param name="HeightMetres">Floor to ceiling, metres.</param>
public sealed record Level(string Name, double ElevationMetres, double HeightMetres)
{
    /// <summary>Its rooms, from the file or found between the walls.</summary>
    public IReadOnlyList<Room> Rooms { get; init; } = [];

    /// <summary>Its walls.</summary>
    public IReadOnlyList<Wall> Walls { get; init; } = [];

    /// <summary>What lies between it and the next level; null for the highest.</summary>
    public FloorAbove? Above { get; init; }

    /// <summary>Its ceiling above the lowest level's floor, metres.</summary>
    public double CeilingMetres => ElevationMetres + HeightMetres;
}

/// <summary>A closed region of a level.</summary>
/// <param name="Name">Its name; found rooms are numbered.</param>
/// <param name="Outline">Its outline on the plan.</param>
public sealed record Room(string Name, Polygon Outline);
