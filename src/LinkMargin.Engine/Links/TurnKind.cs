namespace LinkMargin.Engine.Links;

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
