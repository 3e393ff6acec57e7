using LinkMargin.Engine.Links.Around;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Links;

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
    public void Around(in WayRound way, TraceBuffer buffer) => Power += way.Power;
}
