namespace LinkMargin.Engine.Links;

/// <summary>Where a path leaves its straight line, and by what.</summary>
/// <param name="Kind">What kind of thing it is.</param>
/// <param name="Name">Which one: the wall's, fixture's or opening's name; of a floor, a ceiling or a stair void, its level's.</param>
/// <param name="LevelIndex">The level it belongs to; a stair void belongs to the level below it.</param>
/// <param name="DistanceMetres">From the spot along the path, metres.</param>
public sealed record PathTurn(TurnKind Kind, string Name, int LevelIndex, double DistanceMetres)
{
    /// <summary>Angle to the normal of what throws it back, degrees; null where it is not thrown back.</summary>
    public double? IncidenceDegrees { get; init; }
}
