using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Paths;

/// <summary>Numbers of paths on their places.</summary>
internal sealed class PathNumberLayer(PlanView view, PathNumbers numbers) : PlanLayer(view)
{
    protected override void Draw(SKCanvas canvas) => numbers.Draw(canvas);
}
