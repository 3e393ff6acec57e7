using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Plans;

/// <summary>Names of fixtures on their places.</summary>
internal sealed class FixtureNameLayer(PlanView view, FixtureNames names) : PlanLayer(view)
{
    protected override void Draw(SKCanvas canvas) => names.Draw(canvas);
}
