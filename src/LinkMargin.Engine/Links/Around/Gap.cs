using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Links.Around;

/// <summary>An opening that stands open. Two that meet end to end, such as one cut with its wall, are one.</summary>
/// <param name="Start">One jamb on the plan.</param>
/// <param name="End">The other.</param>
/// <param name="SillMetres">Its lower edge above the level's floor, metres.</param>
/// <param name="HeadMetres">Its upper edge, metres.</param>
/// <param name="Name">What it is called.</param>
internal sealed record Gap(Point2 Start, Point2 End, double SillMetres, double HeadMetres, string Name)
{
    private const double SameMetres = 0.01;

    /// <summary>The gaps in the walls of a level.</summary>
    internal static IReadOnlyList<Gap> Of(Level level)
    {
        var gaps = new List<Gap>();
        foreach (Wall wall in level.Walls)
        {
            Point2 along = (1 / wall.LengthMetres) * (wall.End - wall.Start);
            foreach (Opening opening in wall.Openings.Where(o => o.Filling is null && o.WidthMetres > 0))
            {
                var gap = new Gap(
                    wall.Start + (opening.OffsetMetres * along),
                    wall.Start + ((opening.OffsetMetres + opening.WidthMetres) * along),
                    opening.SillMetres,
                    opening.SillMetres + opening.HeightMetres,
                    opening.Name);
                for (int i; (i = gaps.FindIndex(gap.GoesOnIn)) >= 0; gaps.RemoveAt(i))
                {
                    gap = gap.With(gaps[i]);
                }

                gaps.Add(gap);
            }
        }

        return gaps;
    }

    private bool GoesOnIn(Gap other) =>
        Math.Abs(SillMetres - other.SillMetres) <= SameMetres
        && Math.Abs(HeadMetres - other.HeadMetres) <= SameMetres
        && (Goes(Start, other.End, other.Start) || Goes(Start, other.Start, other.End)
            || Goes(End, other.Start, other.End) || Goes(End, other.End, other.Start));

    // Whether it meets the other where both touch, and goes on in the same direction.
    private bool Goes(Point2 here, Point2 there, Point2 on)
    {
        Point2 back = here == Start ? End : Start;
        return here.DistanceTo(there) <= SameMetres
            && back.DistanceTo(on) >= back.DistanceTo(here) + there.DistanceTo(on) - SameMetres;
    }

    private Gap With(Gap other)
    {
        (Point2 Start, Point2 End)[] pairs = [(Start, other.Start), (Start, other.End), (End, other.Start), (End, other.End)];
        (Point2 start, Point2 end) = pairs.MaxBy(pair => pair.Start.DistanceTo(pair.End));
        return this with { Start = start, End = end };
    }
}
