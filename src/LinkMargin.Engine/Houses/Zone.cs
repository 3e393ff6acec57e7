using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Houses;

/// <summary>Where a console may stand: shelves, a cupboard, the top of a cabinet.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LevelIndex">The level it is on; 0 is the lowest.</param>
/// <param name="Outline">Its outline on the plan.</param>
/// <param name="HeightsMetres">The heights above that level's floor that a console may have there, metres; at least one.</param>
public sealed record Zone(string Name, int LevelIndex, Polygon Outline, IReadOnlyList<double> HeightsMetres);

/// <summary>Where no console may stand.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LevelIndex">The level it is on; 0 is the lowest.</param>
/// <param name="Outline">Its outline on the plan.</param>
/// <param name="FromMetres">Its lower end above that level's floor, metres.</param>
/// <param name="ToMetres">Its upper end above that level's floor, metres.</param>
public sealed record KeepOut(string Name, int LevelIndex, Polygon Outline, double FromMetres, double ToMetres)
{
    /// <summary>Whether a place on its level is kept free.</summary>
    public bool Contains(Point2 plan, double heightMetres) =>
        heightMetres >= FromMetres && heightMetres <= ToMetres && Outline.Contains(plan);
}
