namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// The heights between which a thing stands, and whether a floor or ceiling closes it off there: then nothing passes below or
/// above it except what crosses that floor.
/// </summary>
/// <param name="Low">Bottom edge above the lowest floor, metres.</param>
/// <param name="High">Top edge.</param>
/// <param name="OnFloor">Whether it stands on its level's floor.</param>
/// <param name="UnderCeiling">Whether it reaches the ceiling.</param>
internal readonly record struct VerticalExtent(double Low, double High, bool OnFloor, bool UnderCeiling)
{
    /// <summary>An end of a thing this close to a floor or ceiling is closed off by it, metres.</summary>
    internal const double SameMetres = 0.01;

    /// <summary>What stands between two heights of a storey.</summary>
    internal static VerticalExtent Of(double low, double high, double floor, double ceiling) =>
        new(low, high, low <= floor + SameMetres, high >= ceiling - SameMetres);

    /// <summary>Whether a path between two heights reaches the thing's side of the floor and ceiling where it ends.</summary>
    internal bool IsMetBetween(double least, double greatest) =>
        !(OnFloor && greatest <= Low) && !(UnderCeiling && least >= High);

    /// <summary>Where a path that stays above a height can pass below it; −∞ for nowhere.</summary>
    internal double BottomFor(double least) => OnFloor && least >= Low ? double.NegativeInfinity : Low;

    /// <summary>Where a path that stays below a height can pass above it; ∞ for nowhere.</summary>
    internal double TopFor(double greatest) => UnderCeiling && greatest <= High ? double.PositiveInfinity : High;
}
