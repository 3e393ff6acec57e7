using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Building;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Contours;

/// <summary>The ground a field is drawn on: the rooms of a level without the fixtures that fill the space at its height.</summary>
/// <param name="level">The level.</param>
/// <param name="filled">Outlines of these fixtures.</param>
internal sealed class FieldGround(Level level, IReadOnlyList<Polygon> filled)
{
    /// <summary>Outlines of the solid things on a level that a height lies in; nobody holds a controller there.</summary>
    public static IReadOnlyList<Polygon> FilledAt(IEnumerable<Fixture> fixtures, double heightMetres) =>
    [
        .. fixtures.Where(f => !f.IsShell && f.Seat is null && f.FromMetres <= heightMetres && heightMetres <= f.ToMetres)
            .Select(f => new Polygon(f.Corners())),
    ];

    /// <summary>Clips a canvas to it, and makes the rooms' floor bare where asked.</summary>
    public void Clip(SKCanvas canvas, PlanView view, bool bare)
    {
        if (level.Rooms.Count > 0)
        {
            using SKPath rooms = RoomClip.Of(view, level);
            if (bare)
            {
                using SKPaint paper = Pen.Fill(Palette.Paper);
                canvas.DrawPath(rooms, paper);
            }

            canvas.ClipPath(rooms, antialias: true);
        }

        foreach (Polygon outline in filled)
        {
            using SKPath hole = view.Outline(outline.Corners);
            Clips.Without(canvas, hole);
        }
    }
}
