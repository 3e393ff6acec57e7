namespace LinkMargin.Engine.Diffuse;

/// <summary>
/// Where the flights that leave a place go first, as shares of all directions; and, since every flight may be flown backwards,
/// where those that reach it come from.
/// </summary>
internal readonly ref struct Outlook
{
    internal Outlook(int cell, ReadOnlySpan<double> shares, double here, ReadOnlySpan<double> beyond)
    {
        Cell = cell;
        Shares = shares;
        Here = here;
        Beyond = beyond;
    }

    /// <summary>The cell the place is in.</summary>
    internal int Cell { get; }

    /// <summary>By facet of the cell, flights that strike it.</summary>
    internal ReadOnlySpan<double> Shares { get; }

    /// <summary>Flights that set out evenly into the cell, from the plane of a hole.</summary>
    internal double Here { get; }

    /// <summary>By hole, flights that set out evenly into the cell behind it.</summary>
    internal ReadOnlySpan<double> Beyond { get; }
}
