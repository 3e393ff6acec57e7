using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Links;

/// <summary>One obstacle met by a path. Geometry only: it knows what and at which angle, not how many dB.</summary>
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
