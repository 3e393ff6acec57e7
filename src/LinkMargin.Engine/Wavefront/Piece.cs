namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// A part of an obstacle as a ray sees it: the rectangle of wave front that it covers, in v to the left of the line and above it,
/// and what it is. Geometry only.
/// </summary>
internal struct Piece
{
    /// <summary>The plane of a thing that shares it with nothing else.</summary>
    internal const int NoPlane = -1;

    /// <summary>The plane's image in a mirror: one more plane, which a path may cross as well as the plane itself.</summary>
    internal static int ImageOf(int plane) => plane == NoPlane ? NoPlane : -2 - plane;

    /// <summary>Right end, v; −∞ for the whole front.</summary>
    public double Low;

    /// <summary>Left end, v; ∞ for the whole front.</summary>
    public double High;

    /// <summary>Bottom, v; −∞ where nothing passes beneath.</summary>
    public double Bottom;

    /// <summary>Top, v; ∞ where nothing passes over.</summary>
    public double Top;

    /// <summary>The plane it is part of, by number: pieces of one plane stand beside each other, never one behind the other.</summary>
    public int Plane;

    /// <summary>What it is made of.</summary>
    public int Material;

    /// <summary>Share of the amplitude that passes beside it, such as through a hole in a floor, 0 to 1.</summary>
    public double Beside;

    /// <summary>Cosine of the angle to the surface's normal.</summary>
    public double CosIncidence;

    /// <summary>How much of it counts: see the share of a crossing.</summary>
    public double Share;

    /// <summary>Ribs average amplitudes by their share; everything else scales its loss.</summary>
    public bool IsRibs;

    /// <summary>Whether nothing passes beside it within reach of the line.</summary>
    internal readonly bool TakesUpAll(in FrontReach reach) =>
        Low <= -reach.End && High >= reach.End && Bottom <= -reach.End && Top >= reach.End;
}
