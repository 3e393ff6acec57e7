using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Plans;

/// <summary>Seats and spots with their labels, on top of everything.</summary>
internal sealed class MarkLayer(PlanView view, MarkLabels labels) : PlanLayer(view)
{
    protected override void Draw(SKCanvas canvas) => labels.Draw(canvas);
}
