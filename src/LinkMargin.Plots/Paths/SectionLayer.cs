using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Paths;

/// <summary>The structure of the house in a cut: rooms, floors with their layers and joists, walls with their openings, fixtures.</summary>
internal sealed class SectionLayer(PlanView view, Section section) : PlanLayer(view)
{
    private const double EdgePoints = 0.7;
    private const double EndPoints = 2;

    protected override void Draw(SKCanvas canvas)
    {
        foreach (Level level in section.Levels)
        {
            using SKPaint air = Pen.Fill(Palette.Paper);
            foreach ((double from, double to) in section.Cut.InsideAny(level.Rooms.Select(room => room.Outline)))
            {
                canvas.DrawRect(Rect(from, level.ElevationMetres, to, level.CeilingMetres), air);
            }
        }

        foreach (FloorInCut floor in section.Floors)
        {
            DrawFloor(canvas, floor);
        }

        DrawEnds(canvas);
        foreach (Level level in section.Levels)
        {
            foreach (WallInCut wall in section.Cut.Walls(level))
            {
                DrawWall(canvas, level, wall);
            }
        }

        foreach (FixtureInCut fixture in section.Fixtures)
        {
            DrawFixture(canvas, fixture);
        }
    }

    private SKRect Rect(double from, double bottom, double to, double top) =>
        new((float)View.PixelX(from), (float)View.PixelY(top), (float)View.PixelX(to), (float)View.PixelY(bottom));

    // Layers from the top; a joist layer is empty between its joists.
    private void DrawFloor(SKCanvas canvas, FloorInCut floor)
    {
        using SKPaint board = Pen.Fill(Palette.FaintInk), bay = Pen.Fill(Palette.Paper), filling = Pen.Fill(Palette.Ground);
        using SKPaint edge = Pen.Line(Palette.SoftInk, View.Points(EdgePoints)), joist = Pen.Fill(Palette.QuietInk);
        foreach ((double from, double to) in floor.Holes)
        {
            canvas.DrawRect(Rect(from, floor.BottomMetres, to, floor.TopMetres), bay);
        }

        foreach ((double from, double to) in floor.Stretches)
        {
            double top = floor.TopMetres, scale = (floor.TopMetres - floor.BottomMetres) / floor.Floor.BuildUp.ThicknessMetres;
            canvas.Save();
            canvas.ClipRect(Rect(from, floor.BottomMetres, to, floor.TopMetres));
            foreach (FloorLayer layer in floor.Floor.BuildUp.Layers)
            {
                double bottom = top - (layer.ThicknessMetres * scale);
                bool isBay = layer.Joists is not null || layer.Material is null;
                canvas.DrawRect(Rect(from, bottom, to, top), !isBay ? board : layer.Material is null ? bay : filling);
                if (layer.Joists is Ribs ribs && floor.Floor.Joists is JoistLayout joists)
                {
                    foreach ((double middle, double half) in section.Cut.Joists(joists, ribs.WidthMetres, from, to))
                    {
                        SKRect rect = Rect(middle - half, bottom, middle + half, top);
                        canvas.DrawRect(rect, joist);
                        canvas.DrawRect(rect, edge);
                    }
                }

                canvas.DrawLine((float)View.PixelX(from), (float)View.PixelY(bottom), (float)View.PixelX(to), (float)View.PixelY(bottom), edge);
                top = bottom;
            }

            canvas.Restore();
            canvas.DrawRect(Rect(from, floor.BottomMetres, to, floor.TopMetres), edge);
        }
    }

    // The file does not say what is below the lowest floor and above the highest ceiling, so each is drawn as a line.
    private void DrawEnds(SKCanvas canvas)
    {
        using SKPaint line = Pen.Line(Palette.SoftInk, View.Points(EndPoints));
        void Along(Level level, double height)
        {
            foreach ((double from, double to) in section.Cut.InsideAny(level.Rooms.Select(room => room.Outline)))
            {
                canvas.DrawLine((float)View.PixelX(from), (float)View.PixelY(height), (float)View.PixelX(to), (float)View.PixelY(height), line);
            }
        }

        if (section.IsLowest)
        {
            Along(section.Levels[0], section.Levels[0].ElevationMetres);
        }

        if (section.Levels[^1].Above is null)
        {
            Along(section.Levels[^1], section.Levels[^1].CeilingMetres);
        }
    }

    private void DrawWall(SKCanvas canvas, Level level, WallInCut wall)
    {
        using SKPaint solid = Pen.Fill(Palette.QuietInk), leaf = Pen.Line(Palette.SoftInk, View.Points(1.8)), edge = Pen.Line(Palette.SoftInk, View.Points(EdgePoints));
        double floor = level.ElevationMetres;
        foreach ((double bottom, double top) in wall.Solid())
        {
            canvas.DrawRect(Rect(wall.From, floor + bottom, wall.To, floor + top), solid);
        }

        if (wall.Opening is Opening opening)
        {
            double sill = floor + opening.SillMetres, head = sill + opening.HeightMetres, middle = (wall.From + wall.To) / 2;
            foreach (double face in new[] { wall.From, wall.To })
            {
                canvas.DrawLine((float)View.PixelX(face), (float)View.PixelY(sill), (float)View.PixelX(face), (float)View.PixelY(head), edge);
            }

            if (opening.Filling is not null)
            {
                canvas.DrawLine((float)View.PixelX(middle), (float)View.PixelY(sill), (float)View.PixelX(middle), (float)View.PixelY(head), leaf);
            }
        }
    }

    private void DrawFixture(SKCanvas canvas, FixtureInCut fixture)
    {
        using SKPaint fill = Pen.Fill(Palette.Paper.WithAlpha(200)), solid = Pen.Line(Palette.Ink, View.Points(0.9)), panel = Pen.Line(Palette.Ink, View.Points(1.4));
        Fixture of = fixture.Fixture;
        SKRect rect = Rect(fixture.From, fixture.BottomMetres, fixture.To, fixture.TopMetres);
        if (!of.IsShell)
        {
            canvas.DrawRect(rect, fill);
            canvas.DrawRect(rect, solid);
            return;
        }

        using var sides = new SKPath();
        void Side(bool isThere, float x0, float y0, float x1, float y1)
        {
            if (isThere)
            {
                sides.MoveTo(x0, y0);
                sides.LineTo(x1, y1);
            }
        }

        Side(fixture.HasNear, rect.Left, rect.Top, rect.Left, rect.Bottom);
        Side(fixture.HasFar, rect.Right, rect.Top, rect.Right, rect.Bottom);
        Side(!of.OpenSides.HasFlag(BoxSides.Top), rect.Left, rect.Top, rect.Right, rect.Top);
        Side(!of.OpenSides.HasFlag(BoxSides.Bottom), rect.Left, rect.Bottom, rect.Right, rect.Bottom);
        canvas.DrawPath(sides, panel);
    }
}
