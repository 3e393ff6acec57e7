using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans.Walls;

/// <summary>
/// Finds walls written along the middle of a wall whose rooms were drawn to its faces. They were meant to replace the rooms'
/// wall but are too far from it, so both count.
/// </summary>
internal static class WallsBeside
{
    /// <summary>Reports each full-height wall with a room's wall close beside it for at least half its length.</summary>
    internal static void Report(
        IReadOnlyList<WrittenWall> fullWalls, IReadOnlyList<Segment> roomWalls, PlanProblems problems)
    {
        SegmentIndex<Segment> index = new(roomWalls, s => s);
        foreach (WrittenWall wall in fullWalls)
        {
            Segment written = wall.Segment;
            foreach (Segment other in index.Near(written, PlanLimits.BesideMetres))
            {
                double apart = Math.Abs(other.Across(written.PointAt(written.Length / 2)));
                Span common = written.Shadow(other).Meet(new Span(0, written.Length));
                if (written.IsParallelTo(other)
                    && apart <= PlanLimits.BesideMetres + PlanLimits.RoundingMetres
                    && common.Length >= written.Length / 2)
                {
                    problems.OneOfMany(
                        Severity.Warning,
                        "walls beside room walls",
                        wall.Mark,
                        $"{wall.Label(problems.Lengths)} runs {problems.Lengths.Exact(apart)} from the room wall between {problems.Lengths.Place(other.Start)} and "
                            + $"{problems.Lengths.Place(other.End)}, so both count; to replace the room wall, draw this one exactly along it");
                    break;
                }
            }
        }
    }
}
