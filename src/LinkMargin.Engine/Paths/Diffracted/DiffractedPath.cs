using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>One diffracted path to one place: round one edge, or round a first and a last.</summary>
internal struct DiffractedPath
{
    /// <summary>The first edge, by number; the last one too where there is only one.</summary>
    public int First;

    /// <summary>The last edge.</summary>
    public int Last;

    /// <summary>Where it passes the first edge.</summary>
    public Point3 FirstPlace;

    /// <summary>Where it passes the last edge.</summary>
    public Point3 LastPlace;

    /// <summary>Its whole length, metres.</summary>
    public double Metres;

    /// <summary>Its diffraction loss, all edges together, dB.</summary>
    public double DiffractionDb;

    /// <summary>Share of its power that the player's own body leaves.</summary>
    public double Body;

    /// <summary>Power that arrives, share of the power transmitted between isotropic antennas.</summary>
    public double Power;

    /// <summary>Whether it goes round two edges.</summary>
    internal readonly bool HasTwoEdges => First != Last;

    /// <summary>Writes its corners, from the console to the hands; returns how many there are.</summary>
    internal readonly int Corners(Point3 console, Point3 hands, Span<Point3> corners)
    {
        int count = 0;
        corners[count++] = console;
        corners[count++] = FirstPlace;
        if (HasTwoEdges)
        {
            corners[count++] = LastPlace;
        }

        corners[count++] = hands;
        return count;
    }
}
