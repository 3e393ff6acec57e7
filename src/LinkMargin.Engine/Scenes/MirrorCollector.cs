using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>Groups upright panels into mirrors, one for each plane, so that a wall in two parts is one mirror.</summary>
/// <param name="lines">Where all the panels are on the plan.</param>
internal sealed class MirrorCollector(IEnumerable<(Point2 Start, Point2 End)> lines)
{
    private readonly UprightPlanes planes = new(lines);
    private readonly Dictionary<int, List<MirrorPanel>> panels = [];
    private int added;

    /// <summary>The mirrors.</summary>
    internal IReadOnlyList<UprightMirror> All =>
        [.. planes.All.Select((p, i) => new UprightMirror(i, p.NormalX, p.NormalY, p.Offset, [.. panels[i].OrderBy(panel => panel.From)]))];

    /// <summary>How many there are.</summary>
    internal int Count => planes.All.Count;

    /// <summary>Adds the next panel to the mirror of its plane.</summary>
    /// <returns>The mirror's number.</returns>
    internal int Add(
        Point2 start, Point2 end, VerticalExtent rise, int material, int name, IReadOnlyList<OpeningPanel> openings)
    {
        int number = planes.NumberOf(added++);
        UprightPlane plane = planes.All[number];
        if (!panels.TryGetValue(number, out List<MirrorPanel>? there))
        {
            panels.Add(number, there = []);
        }

        double from = (plane.NormalX * start.Y) - (plane.NormalY * start.X);
        double to = (plane.NormalX * end.Y) - (plane.NormalY * end.X);
        bool runsBack = to < from;
        there.Add(new MirrorPanel(
            Math.Min(from, to),
            Math.Max(from, to),
            rise,
            material,
            name,
            [.. openings.Select(o => runsBack
                ? o with { From = from - o.To, To = from - o.From }
                : o with { From = from + o.From, To = from + o.To }).OrderBy(o => o.From)]));
        return number;
    }
}
