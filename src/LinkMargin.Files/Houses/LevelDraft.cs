using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Plans;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Houses;

/// <summary>A level as written, before its plan is laid out and its height in the house is known.</summary>
/// <param name="Name">Its name; a description where none could be read.</param>
/// <param name="Mark">Where it starts.</param>
/// <param name="Plan">Its plan as written.</param>
/// <param name="HeightMetres">Floor to ceiling; null where that could not be read.</param>
/// <param name="ElevationMetres">Its floor, from wherever the file measures; null where not given.</param>
/// <param name="ElevationMark">Where the elevation is written, or where the level starts.</param>
/// <param name="Above">What lies above it; null where nothing is written or it could not be read.</param>
internal sealed record LevelDraft(
    string Name,
    Mark Mark,
    PlanDraft Plan,
    double? HeightMetres,
    double? ElevationMetres,
    Mark ElevationMark,
    FloorAbove? Above)
{
    /// <summary>Whether an elevation is written that could not be read.</summary>
    public bool IsElevationUnread { get; init; }

    /// <summary>Whether all its rooms and walls could be read, so that what lies outside them is known.</summary>
    public bool IsOutlineKnown { get; init; }

    /// <summary>Every corner of its rooms and walls.</summary>
    public IEnumerable<Point2> Corners => Plan.Rooms.SelectMany(r => r.Outline).Concat(Plan.Walls.SelectMany(w => w.Along));
}
