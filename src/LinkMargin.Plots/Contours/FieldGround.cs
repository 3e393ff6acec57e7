using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Building;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Contours;

/// <summary>The ground a field is drawn on: the rooms of a level without the fixtures that are solid at its height.</summary>
/// <param name="level">The level.</param>
/// <param name="filled">The outlines of those fixtures.</param>
internal sealed class FieldGround(Level level, IReadOnlyList<Polygon> filled)
{
    /// <summary>Outlines of the fixtures on a level that are solid at a height; nobody holds a controller there.</summary>
    public static IReadOnlyList<Polygon> FilledAt(IEnumerable<Fixture> fixtures, double heightMetres) =>
    [
        .. fixtures.Where(f => !f.IsShell && f.Seat is null && f.FromMetres <= heightMetres && heightMetres <= f.ToMetres)
            .Select(f => new Polygon(f.Corners())),
    ];

    /// <summary>Clips a canvas to it; with 'bare', first fills the rooms' floor with paper.</summary>
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
