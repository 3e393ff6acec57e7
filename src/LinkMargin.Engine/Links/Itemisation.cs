using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Links;

/// <summary>Turns hits into the crossings a person reads.</summary>
internal static class Itemisation
{
    /// <summary>What a straight line meets, in order.</summary>
    internal static Crossing[] Crossings(Scene scene, Point3 from, Point3 to, TraceBuffer buffer, bool wholeFloors, double offsetMetres = 0)
    {
        scene.Trace(from, to, buffer, wholeFloors);
        double length = from.DistanceTo(to);
        var crossings = new Crossing[buffer.Count];
        for (int i = 0; i < crossings.Length; i++)
        {
            Hit hit = buffer.Hits[i];
            crossings[i] = new Crossing(
                hit.Kind,
                scene.Names[hit.Name],
                scene.Materials[hit.Material],
                hit.Level,
                double.RadiansToDegrees(Math.Acos(hit.CosIncidence)),
                hit.Share,
                offsetMetres + (hit.Along * length));
        }

        return crossings;
    }
}
