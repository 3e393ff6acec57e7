using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Plans;

/// <summary>All rooms of a level as one region, to keep a field's tones and lines inside the house.</summary>
internal static class RoomClip
{
    public static SKPath Of(PlanView view, Level level)
    {
        var path = new SKPath { FillType = SKPathFillType.Winding };
        foreach (Room room in level.Rooms)
        {
            path.AddPoly([.. room.Outline.Corners.Select(view.Pixel)], close: true);
        }

        return path;
    }
}
