using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Building;

/// <summary>
/// Doors in their state (open: leaf and swing; closed: leaf in the wall), windows with their panes, gaps with the
/// line of the wall above.
/// </summary>
internal sealed class OpeningLayer(PlanView view, Level level) : PlanLayer(view)
{
    /// <summary>The colour of openings.</summary>
    public SKColor Ink { get; init; } = Palette.Ink;

    protected override void Draw(SKCanvas canvas)
    {
        foreach (Wall wall in level.Walls)
        {
            foreach (Opening opening in wall.Openings)
            {
                switch (opening.Kind)
                {
                    case OpeningKind.Door:
                        DrawDoor(canvas, wall, opening);
                        break;
                    case OpeningKind.Window:
                        DrawWindow(canvas, wall, opening);
                        break;
                    default:
                        DrawGap(canvas, wall, opening);
                        break;
                }
            }
        }
    }

    private void DrawDoor(SKCanvas canvas, Wall wall, Opening door)
    {
        DoorSwing swing = DoorSwing.Of(level, wall, door);
        SKPoint hinge = View.Pixel(swing.Hinge), latch = View.Pixel(swing.Latch), tip = View.Pixel(swing.Tip);
        SKPoint end = door.IsOpen ? tip : latch;
        if (door.IsOpen)
        {
            using SKPaint line = Pen.Line(Ink, View.Points(0.8));
            using var arc = new SKPath();
            float radius = (float)View.Metres(door.WidthMetres);
            arc.MoveTo(latch);
            arc.ArcTo(
                new SKPoint(radius, radius),
                0,
                SKPathArcSize.Small,
                swing.TurnsLeft ? SKPathDirection.CounterClockwise : SKPathDirection.Clockwise,
                tip);
            canvas.DrawPath(arc, line);
        }

        using SKPaint casing = Pen.Line(Palette.Paper.WithAlpha(200), View.Points(3.4));
        using SKPaint leaf = Pen.Line(Ink, View.Points(1.8));
        canvas.DrawLine(hinge, end, casing);
        canvas.DrawLine(hinge, end, leaf);
    }

    private void DrawWindow(SKCanvas canvas, Wall wall, Opening window)
    {
        double half = Math.Max(WallShape.ThicknessOf(wall.Material), View.Points(3) / View.PixelsPerMetre) / 2;
        double from = window.OffsetMetres, to = from + window.WidthMetres;
        using SKPath frame = View.Outline(WallShape.Along(wall, from, to, -half, half));
        using SKPaint fill = Pen.Fill(Palette.Paper);
        using SKPaint line = Pen.Line(Ink, View.Points(0.8));
        canvas.DrawPath(frame, fill);
        canvas.DrawPath(frame, line);
        foreach (double pane in new[] { -half / 4, half / 4 })
        {
            IReadOnlyList<Point2> glass = WallShape.Along(wall, from, to, pane, pane);
            canvas.DrawLine(View.Pixel(glass[0]), View.Pixel(glass[1]), line);
        }
    }

    private void DrawGap(SKCanvas canvas, Wall wall, Opening gap)
    {
        double half = Math.Max(WallShape.ThicknessOf(wall.Material), WallLayer.LeastPixels / View.PixelsPerMetre) / 2;
        using SKPaint line = Pen.Dashed(Ink, View.Points(0.6), View.Points(2), View.Points(2));
        foreach (double face in new[] { -half, half })
        {
            IReadOnlyList<Point2> edge = WallShape.Along(wall, gap.OffsetMetres, gap.OffsetMetres + gap.WidthMetres, face, face);
            canvas.DrawLine(View.Pixel(edge[0]), View.Pixel(edge[1]), line);
        }
    }
}

/// <summary>How an open door is drawn.</summary>
/// <param name="Hinge">The hinged edge, metres.</param>
/// <param name="Latch">The free edge when closed.</param>
/// <param name="Tip">The free edge when open, a quarter turn further.</param>
/// <param name="TurnsLeft">Whether it opens anticlockwise on the plan.</param>
internal sealed record DoorSwing(Point2 Hinge, Point2 Latch, Point2 Tip, bool TurnsLeft)
{
    /// <summary>
    /// A house file does not say which way a door opens. It is drawn with its hinge at the end nearer the wall's start, opening into
    /// a room, and to the wall's left if there are rooms on both sides.
    /// </summary>
    public static DoorSwing Of(Level level, Wall wall, Opening door)
    {
        (Point2 along, Point2 left) = WallShape.DirectionsOf(wall);
        Point2 hinge = wall.Start + (door.OffsetMetres * along);
        Point2 latch = hinge + (door.WidthMetres * along);
        Point2 middle = hinge + (door.WidthMetres / 2 * along);
        bool IsRoom(double aside) => level.Rooms.Any(r => r.Outline.Contains(middle + (aside * left)));
        bool turnsLeft = level.Rooms.Count == 0 || IsRoom(door.WidthMetres / 2) || !IsRoom(-door.WidthMetres / 2);
        return new(hinge, latch, hinge + ((turnsLeft ? door.WidthMetres : -door.WidthMetres) * left), turnsLeft);
    }
}
