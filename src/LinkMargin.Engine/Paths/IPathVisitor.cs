using LinkMargin.Engine.Paths.Diffracted;
using LinkMargin.Engine.Paths.Reflected;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths;

/// <summary>What is done with each path of a link of the full model. Where a buffer comes along, it holds what the front met.</summary>
internal interface IPathVisitor
{
    /// <summary>The straight line.</summary>
    public void Direct(double power, TraceBuffer buffer);

    /// <summary>The diffuse field.</summary>
    public void Diffuse(double power);

    /// <summary>Thrown back by a wall or a fixture's side.</summary>
    public void Upright(UprightMirror mirror, in Reflection reflection, double power, TraceBuffer buffer);

    /// <summary>Thrown back by a floor or ceiling.</summary>
    public void Level(LevelMirror mirror, in Reflection reflection, double power, TraceBuffer buffer);

    /// <summary>Round edges. The buffer's pieces are another way's.</summary>
    public void Around(in DiffractedPath way, TraceBuffer buffer);
}
