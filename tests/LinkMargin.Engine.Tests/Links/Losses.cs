using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>Path losses of lines, for laws that compare houses.</summary>
internal static class Losses
{
    /// <summary>Two path losses nearer than this are the same, dB.</summary>
    internal const double SameDb = 1e-9;

    internal static double Of(Scene scene, Line line) =>
        LinkEvaluation.PathLossDb(scene, line.From, line.To, new TraceBuffer());

    internal static void AreTheSame(House here, House there, IEnumerable<Line> lines)
    {
        Scene sceneHere = Scene.Compile(here), sceneThere = Scene.Compile(there);
        Assert.All(lines, line => Assert.Equal(Of(sceneHere, line), Of(sceneThere, line), SameDb));
    }
}
