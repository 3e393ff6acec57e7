using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Houses;

/// <summary>A closed region of a level.</summary>
/// <param name="Name">Its name; found rooms are numbered.</param>
/// <param name="Outline">Its outline on the plan.</param>
public sealed record Room(string Name, Polygon Outline);
