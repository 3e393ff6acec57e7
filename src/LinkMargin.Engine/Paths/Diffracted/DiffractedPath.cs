using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>One diffracted path to one place.</summary>
internal struct DiffractedPath
{
    /// <summary>The last edge, by number.</summary>
    public int Edge;

    /// <summary>Where it passes that edge.</summary>
    public Point3 Place;

    /// <summary>Its whole length, metres.</summary>
    public double Metres;

    /// <summary>Its diffraction loss, all edges together, dB.</summary>
    public double DiffractionDb;

    /// <summary>Share of its power that the player's own body leaves.</summary>
    public double Body;

    /// <summary>Power that arrives, share of the power sent out between isotropic antennas.</summary>
    public double Power;
}

/// <summary>The best path from a console to an edge.</summary>
/// <param name="Before">The edge before it; −1 where the console is seen directly.</param>
/// <param name="From">The place its last leg comes from.</param>
/// <param name="Metres">Its length.</param>
/// <param name="LossDb">Loss of the obstacles in its way, dB.</param>
/// <param name="DiffractionDb">Loss at the edge before it, if there is one, dB.</param>
internal readonly record struct EdgeReach(int Before, Point3 From, double Metres, double LossDb, double DiffractionDb);
