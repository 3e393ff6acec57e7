using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Propagation;

namespace LinkMargin.Engine.Scenes;

/// <summary>How the joists of a floor lie; the first offset is null where unknown.</summary>
internal sealed record RibLayout(
    double RunDegrees, double WidthMetres, double DepthMetres, double SpacingMetres, double? FirstOffsetMetres)
{
    /// <summary>Signed distance from the nearest joist's centre line, metres; null where the joists' places are unknown.</summary>
    internal double? OffsetFromNearest(Point2 at) => FirstOffsetMetres is double first
        ? RibShare.OffsetMetres(at.X, at.Y, RunDegrees, first, SpacingMetres)
        : null;
}
