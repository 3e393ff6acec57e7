using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Building;

/// <summary>Fixtures as outlines: solid ones closed and lightly filled, shells by their panels, with open sides left open.</summary>
internal sealed class FixtureLayer(PlanView view, IReadOnlyList<Fixture> fixtures) : PlanLayer(view)
{
    // Each side runs from the corner of the same number to the next one.
    private static readonly BoxSides[] SideFromCorner = [BoxSides.South, BoxSides.East, BoxSides.North, BoxSides.West];

    /// <summary>The colour of fixtures.</summary>
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
                using SKPath outline = View.Outline(fixture.Corners());
                canvas.DrawPath(outline, fill);
            }

            using var sides = new SKPath();
            foreach ((Point2 from, Point2 to, bool isThere) in SidesOf(fixture))
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

    /// <summary>Each vertical side and whether it is closed; only a shell's open sides are not.</summary>
    internal static IEnumerable<(Point2 From, Point2 To, bool IsThere)> SidesOf(Fixture fixture)
    {
        IReadOnlyList<Point2> corners = fixture.Corners();
        for (int i = 0; i < corners.Count; i++)
        {
            bool isOpen = fixture.IsShell && fixture.OpenSides.HasFlag(SideFromCorner[i]);
            yield return (corners[i], corners[(i + 1) % corners.Count], !isOpen);
        }
    }
}
