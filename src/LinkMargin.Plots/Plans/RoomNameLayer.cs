using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Plans;

/// <summary>Names of rooms on their places.</summary>
internal sealed class RoomNameLayer(PlanView view, RoomNames names) : PlanLayer(view)
{
    protected override void Draw(SKCanvas canvas) => names.Draw(canvas);
}
