using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Plans;

/// <summary>Fixtures as outlines: solid ones closed and lightly filled, shells by their panels, open sides left open.</summary>
internal sealed class FixtureLayer(PlanView view, IReadOnlyList<Fixture> fixtures) : PlanLayer(view)
{
    /// <summary>What fixtures are drawn in.</summary>
    public SKColor Ink { get; init; } = Palette.Ink;

    protected override void Draw(SKCanvas canvas)
    {
        using SKPaint fill = Pen.Fill(Palette.Paper.WithAlpha(150));
        using SKPaint casing = Pen.Line(Palette.Paper.WithAlpha(190), View.Points(2.4));
        using SKPaint solid = Pen.Line(Ink, View.Points(0.9));
        using SKPaint panel = Pen.Line(Ink, View.Points(1.4));
        foreach (Fixture fixture in fixtures)
        {
            if (!fixture.IsShell)
            {
                using SKPath outline = View.Outline(FixtureShape.CornersOf(fixture));
                canvas.DrawPath(outline, fill);
            }

            using var sides = new SKPath();
            foreach ((Engine.Geometry.Point2 from, Engine.Geometry.Point2 to, bool isThere) in FixtureShape.SidesOf(fixture))
            {
                if (isThere)
                {
                    sides.MoveTo(View.Pixel(from));
                    sides.LineTo(View.Pixel(to));
                }
            }

            canvas.DrawPath(sides, casing);
            canvas.DrawPath(sides, fixture.IsShell ? panel : solid);
        }
    }
}
