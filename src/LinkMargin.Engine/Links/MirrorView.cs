using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Links.Around;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Links;

/// <summary>
/// The mirrors one console lights, each with the least that stands between: most walls of a house lie behind others, and a
/// reflection that has lost its energy before it is thrown back need not be looked at in every cell.
/// </summary>
internal sealed class MirrorView
{
    // Losses change from place to place on a mirror: places looked at along each panel and up it, and what is allowed for
    // the places between, edges included.
    private const int Places = 5;
    private const double BetweenDb = 6;

    // Places are looked at from the console's side, just clear of the mirror itself.
    private const double ClearMetres = 0.01;

    private readonly Scene scene;
    private readonly LossTables losses;
    private readonly Point3 console;

    internal MirrorView(Scene scene, LossTables losses, Point3 console)
    {
        this.scene = scene;
        this.losses = losses;
        this.console = console;
        var buffer = new TraceBuffer();
        Uprights =
        [
            .. scene.Uprights
                .Select(mirror => (mirror, LeastDb: Math.Max(0, mirror.Panels.Min(panel => LeastDb(mirror, panel, buffer)) - BetweenDb)))
                .OrderBy(view => view.LeastDb),
        ];
    }

    /// <summary>The upright mirrors and the least loss on the way to them, dB; the least lossy first.</summary>
    internal IReadOnlyList<(UprightMirror Mirror, double LeastDb)> Uprights { get; }

    private double LeastDb(UprightMirror mirror, MirrorPanel panel, TraceBuffer buffer)
    {
        double least = double.PositiveInfinity;
        double side = mirror.Before(console.X, console.Y) >= 0 ? ClearMetres : -ClearMetres;
        for (int i = 0; i < Places; i++)
        {
            double along = panel.From + ((i + 0.5) / Places * (panel.To - panel.From));
            double x = ((mirror.Offset + side) * mirror.NormalX) - (along * mirror.NormalY);
            double y = ((mirror.Offset + side) * mirror.NormalY) + (along * mirror.NormalX);
            foreach (double height in new[] { 0.15, 0.5, 0.85 })
            {
                Point3 place = new(x, y, panel.Low + (height * (panel.High - panel.Low)));
                least = Math.Min(least, BendGraph.LegDb(scene, losses, console, place, buffer));
            }
        }

        return least;
    }
}
