namespace LinkMargin.Files.Plans.Shapes;

/// <summary>
/// Every limit the layout of a plan works to: one constant each, read by the code, the messages and the tests. All are
/// choices of our own about what a person with a tape measure means.
/// </summary>
internal static class PlanLimits
{
    /// <summary>Corners this close are one corner; shorter stretches of wall do not exist. Metres.</summary>
    internal const double JoinMetres = 0.001;

    /// <summary>A written wall this close to a room's edge lies along it, and its ends join what they touch. Metres.</summary>
    internal const double AlongMetres = 0.005;

    /// <summary>A full wall written this close beside a room's wall, and not along it, is reported: both count. Metres.</summary>
    internal const double BesideMetres = 0.15;

    /// <summary>Facing edges of two rooms up to this far apart are the two faces of one wall. Metres.</summary>
    internal const double ThickestWallMetres = 0.35;

    /// <summary>Facing edges of two rooms may overlap by this much and still be one wall. Metres.</summary>
    internal const double FacingOverlapMetres = 0.02;

    /// <summary>
    /// Narrowest strip of outdoors between two rooms that is reported: a cavity wall is hardly thicker. Up to
    /// <see cref="ThickestWallMetres"/> most are joined to one wall, and then there is no strip. Metres.
    /// </summary>
    internal const double NarrowestStripMetres = 0.3;

    /// <summary>Widest strip of outdoors between two rooms that is reported: a wider one is a passage between houses. Metres.</summary>
    internal const double WidestStripMetres = 1;

    /// <summary>Share of a strip that rooms may cover, by rounding, while it counts as empty.</summary>
    internal const double LeastStripCover = 0.01;

    /// <summary>Edges within this angle of each other run parallel. Degrees.</summary>
    internal const double ParallelDegrees = 0.5;

    /// <summary>
    /// Walls that continue one another past rooms measured clear, this far out of line, are one straight wall: so much a
    /// tape measure is off. Metres.
    /// </summary>
    internal const double OutOfLineMetres = 0.05;

    /// <summary>Gaps along one line of walls that differ by more than this are worth a word. Metres.</summary>
    internal const double UnevenGapMetres = 0.1;

    /// <summary>Two rooms may overlap by this area before it is an error. Square metres.</summary>
    internal const double OverlapSquareMetres = 0.01;

    /// <summary>A closed region must be larger than this to be found as a room. Square metres.</summary>
    internal const double LeastFoundRoomSquareMetres = 0.5;

    /// <summary>A wall's loose end this close to another wall, outside every closed room, keeps a room open. Metres.</summary>
    internal const double LooseEndMetres = 0.6;

    /// <summary>The same inside a closed room, where a wider gap is a passage beside a wing wall. Metres.</summary>
    internal const double LooseEndInRoomMetres = 0.3;

    /// <summary>Most walls a level may have once laid out.</summary>
    internal const int MostWalls = 20_000;

    /// <summary>Most pairs of walls, or of rooms, within reach of each other, so that the work stays bounded.</summary>
    internal const int MostPairs = 1_000_000;

    /// <summary>Most places of a level where a written wall runs through another wall.</summary>
    internal const int MostCrossings = 2000;

    /// <summary>Faults of one kind reported one by one; the rest are counted.</summary>
    internal const int MostOfAKind = 50;

    /// <summary>Slack for lengths that passed through a change of units. Metres.</summary>
    internal const double RoundingMetres = 1e-6;

    /// <summary>Sine of the angle within which edges run parallel.</summary>
    internal static readonly double ParallelSine = Math.Sin(ParallelDegrees * Math.PI / 180);
}
