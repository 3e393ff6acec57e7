namespace LinkMargin.Engine.Paths;

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
    /// <summary>Thrown back by a wall, or a door or window in it.</summary>
    Wall,

    /// <summary>Thrown back by a side of a large fixture.</summary>
    Fixture,

    /// <summary>Thrown back by a floor.</summary>
    Floor,

    /// <summary>Thrown back by a ceiling.</summary>
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
