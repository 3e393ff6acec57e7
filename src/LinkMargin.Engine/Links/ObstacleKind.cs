namespace LinkMargin.Engine.Links;

/// <summary>What kind of thing a path meets.</summary>
public enum ObstacleKind
{
    /// <summary>A wall outside its openings.</summary>
    Wall,

    /// <summary>A shut door, a window, or another filled opening.</summary>
    Opening,

    /// <summary>One layer of a floor build-up.</summary>
    FloorLayer,

    /// <summary>The joists of a floor, by the share of the first Fresnel zone they cover.</summary>
    Joists,

    /// <summary>A solid fixture, or one panel of a shell.</summary>
    Fixture,

    /// <summary>The body of somebody who sits on another seat.</summary>
    Player,
}
