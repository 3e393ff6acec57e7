namespace LinkMargin.Files.Plans.Shapes;

/// <summary>
/// Every limit for laying out a plan: one constant each, used by the code, the messages and the tests. All are our own
/// choices about what a person with a tape measure means.
/// </summary>
internal static class PlanLimits
{
    /// <summary>Corners this close are one corner, so no stretch of wall is shorter. Metres.</summary>
    internal const double JoinMetres = 0.001;

    /// <summary>A written wall this close to a room's edge lies along it, and its ends join what they touch. Metres.</summary>
    internal const double AlongMetres = 0.005;

    /// <summary>A full wall written this close to a room's wall, but not along it, is reported, since both count. Metres.</summary>
    internal const double BesideMetres = 0.15;

    /// <summary>Facing edges of two rooms up to this far apart are the two faces of one wall. Metres.</summary>
    internal const double ThickestWallMetres = 0.35;

    /// <summary>Facing edges of two rooms may overlap by this much and still be one wall. Metres.</summary>
    internal const double FacingOverlapMetres = 0.02;

    /// <summary>
    /// Narrowest outdoor strip between two rooms that is reported: a cavity wall is hardly thicker. Up to
    /// <see cref="ThickestWallMetres"/> most are joined to one wall, and then there is no strip. Metres.
    /// </summary>
    internal const double NarrowestStripMetres = 0.3;

    /// <summary>Widest outdoor strip between two rooms that is reported: a wider one is a passage between houses. Metres.</summary>
    internal const double WidestStripMetres = 1;

    /// <summary>Share of a strip that rooms may cover, through rounding, while it still counts as empty.</summary>
    internal const double LeastStripCover = 0.01;

    /// <summary>Edges within this angle of each other are parallel. Degrees.</summary>
    internal const double ParallelDegrees = 0.5;

    /// <summary>
    /// Walls that continue one another past rooms given by clear size are one straight wall if no further out of line than this,
    /// the error of a tape measure. Metres.
    /// </summary>
    internal const double OutOfLineMetres = 0.05;

    /// <summary>Gaps along one line of walls that differ by more than this are reported. Metres.</summary>
    internal const double UnevenGapMetres = 0.1;

    /// <summary>Two rooms may overlap by this area before it is an error. Square metres.</summary>
    internal const double OverlapSquareMetres = 0.01;

    /// <summary>A closed region must be larger than this to be found as a room. Square metres.</summary>
    internal const double LeastFoundRoomSquareMetres = 0.5;

    /// <summary>A wall's loose end this close to another wall, outside every closed room, probably leaves a room open. Metres.</summary>
    internal const double LooseEndMetres = 0.6;

    /// <summary>The same inside a closed room, where a wider gap is a passage beside a wing wall. Metres.</summary>
    internal const double LooseEndInRoomMetres = 0.3;

    /// <summary>Most walls a level may have once laid out.</summary>
    internal const int MostWalls = 20_000;

    /// <summary>Most pairs of walls, or of rooms, within reach of each other, to bound the work.</summary>
    internal const int MostPairs = 1_000_000;

    /// <summary>Most places on a level where a written wall crosses another wall.</summary>
    internal const int MostCrossings = 2000;

    /// <summary>How many problems of one kind are reported one by one; the rest are only counted.</summary>
    internal const int MostOfAKind = 50;

    /// <summary>Tolerance for lengths after a conversion of units. Metres.</summary>
    internal const double RoundingMetres = 1e-6;

    /// <summary>Sine of the angle within which edges are parallel.</summary>
    internal static readonly double ParallelSine = Math.Sin(ParallelDegrees * Math.PI / 180);
}
