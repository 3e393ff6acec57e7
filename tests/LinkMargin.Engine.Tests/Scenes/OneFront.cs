using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Scenes;

/// <summary>The front of one straight line.</summary>
internal static class OneFront
{
    /// <summary>What obstacles take of the power on a line, dB.</summary>
    internal static double LossDb(House house, Point3 from, Point3 to)
    {
        Scene scene = Scene.Compile(house);
        var buffer = new TraceBuffer();
        scene.Gather(new Ray(from, to, scene.Band.Equivalent.WavelengthMetres), buffer);
        return -10 * Math.Log10(FrontSum.PowerRatio(buffer.Pieces, new LossTables(scene.Materials, scene.Band)));
    }
}
