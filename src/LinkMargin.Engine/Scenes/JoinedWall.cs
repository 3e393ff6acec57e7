using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// A wall as a ray's front meets it, or several that continue each other in one straight run, of one material and between the same heights: whoever
/// draws rooms has the wall between one room and each of its neighbours apart, and a wall in parts obstructs like the whole one.
/// </summary>
/// <param name="Start">One end.</param>
/// <param name="End">The other end.</param>
/// <param name="VerticalExtent">The heights it stands between.</param>
/// <param name="Mirror">The mirror it is part of, by number.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="Openings">Its openings, by their place along it.</param>
/// <param name="Run">The shares of its length, 0 or less and 1 or more, between which its straight run lies.</param>
internal sealed record JoinedWall(
    Point2 Start, Point2 End, VerticalExtent VerticalExtent, int Mirror, int Material, IReadOnlyList<OpeningPanel> Openings, (double From, double To) Run)
{
    private OpeningPanel[] byShare = []; // with their ends as shares of its length
    private StretchOrder order;

    /// <summary>The openings that reach between two shares of its length, their ends as shares too, and perhaps some between them that do not.</summary>
    internal ReadOnlySpan<OpeningPanel> OpeningsWithin(double from, double to) => order.Within<OpeningPanel>(byShare, from, to);

    /// <summary>The walls of a level; a wall of no length, which obstructs nothing, is left out.</summary>
    internal static IReadOnlyList<JoinedWall> Of(IReadOnlyList<StraightRun> runs, IReadOnlyList<WallPanel> walls)
    {
        var joined = new List<JoinedWall>();
        foreach (StraightRun run in runs)
        {
            var ofRun = new List<JoinedWall>();
            foreach (JoinedWall next in run.Walls.Select(i => Alone(walls[i], run)))
            {
                if (ofRun.Count > 0 && ofRun[^1].IsContinuedBy(next))
                {
                    ofRun[^1] = ofRun[^1].With(next);
                }
                else
                {
                    ofRun.Add(next);
                }
            }

            joined.AddRange(ofRun.Select(wall => wall.In(run)));
        }

        return joined;
    }

    // One wall, drawn along its run.
    private static JoinedWall Alone(WallPanel wall, StraightRun run)
    {
        double length = wall.Start.DistanceTo(wall.End);
        bool runsBack = Point2.Dot(wall.End - wall.Start, run.End - run.Start) < 0;
        return new JoinedWall(
            runsBack ? wall.End : wall.Start,
            runsBack ? wall.Start : wall.End,
            wall.VerticalExtent,
            wall.Mirror,
            wall.Material,
            [.. wall.Openings.Select(o => runsBack ? o with { From = length - o.To, To = length - o.From } : o).OrderBy(o => o.From)],
            (0, 1));
    }

    private JoinedWall In(StraightRun run)
    {
        double length = Start.DistanceTo(End);
        OpeningPanel[] shares = [.. Openings.Select(o => o with { From = o.From / length, To = o.To / length })];
        return this with { Run = run.SharesOf(Start, End), byShare = shares, order = new StretchOrder(shares.Select(o => (o.From, o.To))) };
    }

    private bool IsContinuedBy(JoinedWall next) =>
        End.DistanceTo(next.Start) <= GeometryTolerances.SlackMetres && Material == next.Material && VerticalExtent == next.VerticalExtent;

    private JoinedWall With(JoinedWall next)
    {
        double before = Start.DistanceTo(next.Start);
        return this with { End = next.End, Openings = [.. Openings, .. next.Openings.Select(o => o with { From = before + o.From, To = before + o.To })] };
    }
}
