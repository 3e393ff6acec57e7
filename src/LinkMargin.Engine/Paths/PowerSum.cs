using LinkMargin.Engine.Paths.Diffracted;
using LinkMargin.Engine.Paths.Reflected;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths;

/// <summary>Adds up the powers of a link's paths.</summary>
internal struct PowerSum : IPathVisitor
{
    /// <summary>The sum so far, share of the power sent out between isotropic antennas.</summary>
    internal double Power { get; private set; }

    /// <inheritdoc/>
    public void Direct(double power, TraceBuffer buffer) => Power += power;

    /// <inheritdoc/>
    public void Diffuse(double power) => Power += power;

    /// <inheritdoc/>
    public void Upright(UprightMirror mirror, in Reflection reflection, double power, TraceBuffer buffer) => Power += power;

    /// <inheritdoc/>
    public void Level(LevelMirror mirror, in Reflection reflection, double power, TraceBuffer buffer) => Power += power;

    /// <inheritdoc/>
    public void Around(in DiffractedPath way, TraceBuffer buffer) => Power += way.Power;
}
