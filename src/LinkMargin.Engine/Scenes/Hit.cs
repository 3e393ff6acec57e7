using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Scenes;

/// <summary>One obstacle met by a straight line, in numbers only: what the tracer writes and the evaluator reads.</summary>
internal struct Hit
{
    /// <summary>Place along the line, 0 at its start, 1 at its end.</summary>
    public double Along;

    /// <summary>Index into the scene's names.</summary>
    public int Name;

    /// <summary>Index into the scene's materials.</summary>
    public int Material;

    /// <summary>The level it belongs to.</summary>
    public int Level;

    /// <summary>What kind of thing it is.</summary>
    public ObstacleKind Kind;

    /// <summary>Cosine of the angle to the surface's normal, 0 to 1.</summary>
    public double CosIncidence;

    /// <summary>
    /// Whether it is a solid thing. Its loss is taken head on, as its front takes it: a line that goes in by one side and out by
    /// another loses the same both ways.
    /// </summary>
    public bool IsSolid;

    /// <summary>See <see cref="Crossing.Share"/>.</summary>
    public double Share;

    /// <summary>The mirror that the surface is part of, by number; −1 where it is none.</summary>
    public int Mirror;
}
