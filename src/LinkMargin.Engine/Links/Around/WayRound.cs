using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Links.Around;

/// <summary>One way round to one place.</summary>
internal struct WayRound
{
    /// <summary>The last bend, by number.</summary>
    public int Bend;

    /// <summary>Where it bends there.</summary>
    public Point3 Place;

    /// <summary>Its whole length, metres.</summary>
    public double Metres;

    /// <summary>What its bends cost, dB.</summary>
    public double BendDb;

    /// <summary>Share of its power that the player's own body leaves.</summary>
    public double Body;

    /// <summary>Power that arrives, share of the power sent out between isotropic antennas.</summary>
    public double Power;
}
