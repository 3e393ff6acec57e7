using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>Path losses of lines, for laws that compare houses.</summary>
internal static class LineLoss
{
    /// <summary>Two path losses nearer than this are the same, dB.</summary>
    internal const double SameDb = 1e-9;

    // A line may come out of a bulk fixture through a face it barely grazes. The place where it does is then uncertain by
    // the rounding of coordinates (3e-14 m in a house moved by 50 m) stretched up to 100,000 times, and the length inside
    // costs up to 100 dB a metre: 3e-7 dB.
    private const double SameThroughBulkDb = 1e-6;

    internal static double Of(Scene scene, Line line) =>
        LinkEvaluation.PathLossDb(scene, line.From, line.To, new TraceBuffer());

    /// <summary>A line costs the same in one house as another line in another house.</summary>
    internal static void AreTheSame(Scene here, Line lineHere, Scene there, Line lineThere) =>
        Assert.Equal(Of(here, lineHere), Of(there, lineThere), ToleranceDb(DirectLinks.Path(here, lineHere.From, lineHere.To)));

    /// <summary>Lines cost the same in two houses.</summary>
    internal static void AreTheSame(House here, House there, IEnumerable<Line> lines)
    {
        Scene sceneHere = Scene.Compile(here), sceneThere = Scene.Compile(there);
        Assert.All(lines, line => AreTheSame(sceneHere, line, sceneThere, line));
    }

    /// <summary>How near two losses of such a path must be to be the same, dB.</summary>
    internal static double ToleranceDb(TracedPath path) =>
        path.Crossings.Any(c => c.Kind == ObstacleKind.Fixture && c.Material.Form == LossForm.Bulk) ? SameThroughBulkDb : SameDb;
}
