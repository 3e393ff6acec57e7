using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;

namespace LinkMargin.Engine.Paths;

/// <summary>One path of the energy on a link. Geometry only.</summary>
/// <param name="Kind">Which kind.</param>
/// <param name="Points">Its corners, the spot first, the seat last; at least two.</param>
/// <param name="LengthMetres">Its length, metres.</param>
/// <param name="Crossings">What it crosses, in order from the spot.</param>
public sealed record TracedPath(PathKind Kind, IReadOnlyList<Point3> Points, double LengthMetres, IReadOnlyList<Crossing> Crossings);

/// <summary>The kind of path.</summary>
public enum PathKind
{
    /// <summary>The straight line, with what passes beside the obstacles near it.</summary>
    Direct,

    /// <summary>Reflected once by a wall, floor, ceiling or large fixture.</summary>
    Reflected,

    /// <summary>
    /// Round the edge of an obstacle, through a doorway or a stair void off the straight line; without a turn, round all edges farther from it.
    /// </summary>
    Diffracted,

    /// <summary>The diffuse field: what fills a room after several reflections.</summary>
    Diffuse,
}

/// <summary>One obstacle on a path. Geometry only: what is crossed and at which angle, not how many dB.</summary>
/// <param name="Kind">What kind of thing it is.</param>
/// <param name="Name">Which one: the wall's, opening's, fixture's or floor's name.</param>
/// <param name="Material">What it is made of there.</param>
/// <param name="LevelIndex">The level it belongs to; a floor belongs to the level below it.</param>
/// <param name="IncidenceDegrees">Angle to the surface's normal, 0 (head on) to 90 (grazing).</param>
/// <param name="Share">
/// How much of the table loss's geometry applies: 1 for a sheet; length travelled over the row's thickness for bulk;
/// share of the first Fresnel zone covered for joists.
/// </param>
/// <param name="DistanceMetres">From the path's start, metres.</param>
public sealed record Crossing(
    ObstacleKind Kind,
    string Name,
    Material Material,
    int LevelIndex,
    double IncidenceDegrees,
    double Share,
    double DistanceMetres);

/// <summary>Where a path leaves its straight line, and by what.</summary>
/// <param name="Kind">What kind of thing it is.</param>
/// <param name="Name">Which one: the wall's, fixture's or opening's name; of a floor, a ceiling or a stair void, its level's.</param>
/// <param name="LevelIndex">The level it belongs to; a stair void belongs to the level below it.</param>
/// <param name="DistanceMetres">From the spot along the path, metres.</param>
public sealed record PathTurn(TurnKind Kind, string Name, int LevelIndex, double DistanceMetres)
{
    /// <summary>Angle to the normal of what reflects it, degrees; null where it is not reflected.</summary>
    public double? IncidenceDegrees { get; init; }
}

/// <summary>What makes a path leave its straight line.</summary>
public enum TurnKind
{
    /// <summary>Reflected by a wall, or a door or window in it.</summary>
    Wall,

    /// <summary>Reflected by a side of a large fixture.</summary>
    Fixture,

    /// <summary>Reflected by a floor.</summary>
    Floor,

    /// <summary>Reflected by a ceiling.</summary>
    Ceiling,

    /// <summary>Through an open door or a gap off the straight line.</summary>
    Opening,

    /// <summary>Round the free end of a wall.</summary>
    WallEnd,

    /// <summary>Round the outer corner of walls.</summary>
    WallCorner,

    /// <summary>Round a corner of a large fixture.</summary>
    FixtureCorner,

    /// <summary>Through a hole in a floor off the straight line.</summary>
    StairVoid,
}
