using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Reflected;

/// <summary>
/// The walls of one storey in one plane that stand from floor to ceiling, as stretches along it: nothing of a path between those
/// heights passes over or under them.
/// </summary>
internal sealed class WallScreen
{
    // A slit narrower than this does not count on any front: even where the front is narrowest its two edges are one (FrontSum), metres.
    private const double SlitMetres = 1e-9;

    private readonly Stretch[] stretches; // by where they start
    private readonly StretchOrder order;

    internal WallScreen(UprightMirror plane, Storey storey)
    {
        Offset = plane.Offset;
        stretches = [.. plane.Panels.Where(panel => IsFull(panel.VerticalExtent, storey)).SelectMany(Of).OrderBy(stretch => stretch.From)];
        order = new StretchOrder(stretches.Select(stretch => (stretch.From, stretch.To)));
    }

    /// <summary>Distance of the plane from the plan's origin along its normal, metres.</summary>
    internal double Offset { get; }

    /// <summary>Whether there are none.</summary>
    internal bool IsEmpty => stretches.Length == 0;

    /// <summary>The number of the first of several screens in order that stands at an offset or beyond it.</summary>
    internal static int FirstFrom(WallScreen[] screens, double offset)
    {
        int low = 0, high = screens.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (screens[middle].Offset < offset)
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }

    /// <summary>
    /// Share of power that passes the panel with the least loss between two places along the plane; 1 where panels do not close
    /// off all of it.
    /// </summary>
    internal double Passes(double from, double to, double cosIncidence, LossTables losses)
    {
        double closed = from, most = 0;
        for (int i = order.FirstBeyond(from); i < stretches.Length && closed < to; i++)
        {
            ref readonly Stretch stretch = ref stretches[i];
            if (stretch.From > closed + SlitMetres)
            {
                return 1;
            }

            if (stretch.To > from)
            {
                most = Math.Max(most, Math.Max(Amplitude(stretch.Wall), Amplitude(stretch.Filling)));
                closed = Math.Max(closed, stretch.To);
            }
        }

        return closed < to ? 1 : most * most;

        double Amplitude(int material) => material < 0 ? 1 : losses[material].Amplitude(cosIncidence);
    }

    private static bool IsFull(VerticalExtent rise, Storey storey) =>
        rise.OnFloor && rise.UnderCeiling
        && Math.Abs(rise.Low - storey.Low) <= VerticalExtent.SameMetres && Math.Abs(rise.High - storey.High) <= VerticalExtent.SameMetres;

    // The panel between its openings, and above, below and in them.
    private static IEnumerable<Stretch> Of(MirrorPanel panel)
    {
        double from = panel.From;
        foreach (OpeningPanel opening in panel.Openings)
        {
            yield return new Stretch(from, opening.From, panel.Material, panel.Material);
            yield return new Stretch(opening.From, opening.To, panel.Material, opening.Filling);
            from = opening.To;
        }

        yield return new Stretch(from, panel.To, panel.Material, panel.Material);
    }

    private readonly record struct Stretch(double From, double To, int Wall, int Filling);
}
