using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Building;

/// <summary>Floors of rooms with dotted outlines: a visible dotted line is an edge without a wall.</summary>
internal sealed class RoomLayer(PlanView view, Level level) : PlanLayer(view)
{
    protected override void Draw(SKCanvas canvas)
    {
        using SKPaint floor = Pen.Fill(Palette.Paper);
        using SKPaint edge = Pen.Dashed(Palette.SoftInk, View.Points(0.8), View.Points(1), View.Points(2.2));
        foreach (Room room in level.Rooms)
        {
            using SKPath outline = View.Outline(room.Outline.Corners);
            canvas.DrawPath(outline, floor);
        }

        foreach (Room room in level.Rooms)
        {
            using SKPath outline = View.Outline(room.Outline.Corners);
            canvas.DrawPath(outline, edge);
        }
    }
}

/// <summary>All rooms of a level as one region, to clip a field's tones and lines to the house.</summary>
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
