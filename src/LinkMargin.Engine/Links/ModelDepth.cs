namespace LinkMargin.Engine.Links;

/// <summary>How much of the physics an answer takes in.</summary>
public enum ModelDepth
{
    /// <summary>The straight line and the table loss of everything on it.</summary>
    Direct,

    /// <summary>Angles, edges, openings, reflections, the diffuse field and the player's body.</summary>
    Full,
}
