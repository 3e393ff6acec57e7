using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// A part of an obstacle as a ray sees it: the stretch of wave front it stands in, and what it is. Geometry only.
/// </summary>
internal struct Piece
{
    /// <summary>Pieces that cover less of the front than this are left out: below 0.01 dB, whatever they are made of.</summary>
    internal const double LeastCover = 1e-3;

    /// <summary>Right end of the stretch, v; −∞ for the whole front.</summary>
    public double Low;

    /// <summary>Left end of the stretch, v; ∞ for the whole front.</summary>
    public double High;

    /// <summary>Material of the part of the front that <see cref="Front"/> does not cover; −1 for air.</summary>
    public int Back;

    /// <summary>Material of the covered part; −1 for air.</summary>
    public int Front;

    /// <summary>Share of the front, up and down, that <see cref="Front"/> covers, 0 to 1.</summary>
    public double Cover;

    /// <summary>Share of the loss that applies where the ray passes near the floor or ceiling the obstacle ends at, 0 to 1.</summary>
    public double Hold;

    /// <summary>Cosine of the angle to the surface's normal.</summary>
    public double CosIncidence;

    /// <summary>See <see cref="Crossing.Share"/>.</summary>
    public double Share;

    /// <summary>Ribs average amplitudes by their share; everything else scales its loss.</summary>
    public bool IsRibs;
}
