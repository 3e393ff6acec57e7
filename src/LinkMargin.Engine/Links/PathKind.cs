namespace LinkMargin.Engine.Links;

/// <summary>The way the energy takes.</summary>
public enum PathKind
{
    /// <summary>The straight line, with what passes beside the obstacles near it.</summary>
    Direct,

    /// <summary>Thrown back once by a wall, floor, ceiling or large fixture.</summary>
    Reflected,

    /// <summary>Round the edge of an obstacle, through a doorway or a stair void off the straight line.</summary>
    Around,

    /// <summary>No way of its own any more: what fills a room after some bounces.</summary>
    Diffuse,
}
