using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>One way round to one place.</summary>
internal struct DiffractedPath
{
    /// <summary>The last bend, by number.</summary>
    public int DiffractionEdge;

    /// <summary>Where it bends there.</summary>
    public Point3 Place;

    /// <summary>Its whole length, metres.</summary>
    public double Metres;

    /// <summary>What its bends cost, dB.</summary>
    public double DiffractionDb;

    /// <summary>Share of its power that the player's own body leaves.</summary>
    public double Body;

    /// <summary>Power that arrives, share of the power sent out between isotropic antennas.</summary>
    public double Power;
}

/// <summary>The best way from a console to a bend.</summary>
/// <param name="Before">The bend before it; −1 where the console is seen directly.</param>
/// <param name="From">The place its last leg comes from.</param>
/// <param name="Metres">Its length.</param>
/// <param name="LossDb">What stands in its way, dB.</param>
/// <param name="DiffractionDb">What its own bend, if it has one, costs, dB.</param>
internal readonly record struct EdgeReach(int Before, Point3 From, double Metres, double LossDb, double DiffractionDb);
