using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Plans;

/// <summary>Names of fixtures, on or beside them, in small letters without a box.</summary>
internal sealed class FixtureNames
{
    private const double SizePoints = 9;

    private readonly PlanView view;
    private readonly List<(Fixture Fixture, PlacedLabel Place)> placed = [];

    /// <summary>Finds places: inside the fixture where the name fits, else beside it.</summary>
    public FixtureNames(PlanView view, IReadOnlyList<Fixture> fixtures, IReadOnlyList<LabelBox> hard, IReadOnlyList<LabelBox> soft)
    {
        this.view = view;
        using Lettering lettering = Letters();
        double widest = MarkLabels.WidestName(view);
        var outside = new List<(Fixture Fixture, LabelRequest Request)>();
        foreach (Fixture fixture in fixtures.Select(f => f with { Name = lettering.Fitted(f.Name, widest) }))
        {
            LabelRequest request = RequestFor(fixture, lettering);
            LabelBox middle = LabelBox.Around(request.X, request.Y, request.Width / 2, request.Height / 2);
            if (IsWithin(fixture, middle) && !hard.Any(middle.Overlaps))
            {
                placed.Add((fixture, new(middle, HasLeader: false)));
            }
            else
            {
                outside.Add((fixture, request));
            }
        }

        var placer = new LabelPlacer(view.Frame.Grown(-view.Points(2)), [.. hard, .. Taken], soft, view.Points(2));
        placed.AddRange(outside.Select(o => o.Fixture).Zip(placer.Place([.. outside.Select(o => o.Request)])));
    }

    /// <summary>Ground the names take, pixels.</summary>
    public IEnumerable<LabelBox> Taken => placed.Select(p => p.Place.Box);

    public void Draw(SKCanvas canvas)
    {
        using Lettering lettering = Letters();
        using SKPaint leader = Pen.Line(Palette.SoftInk, view.Points(0.6));
        foreach ((Fixture fixture, PlacedLabel place) in placed)
        {
            LabelBox box = place.Box;
            SKPoint from = view.Pixel(fixture.Centre);
            if (place.HasLeader)
            {
                canvas.DrawLine(
                    from.X, from.Y, (float)Math.Clamp(from.X, box.Left, box.Right), (float)Math.Clamp(from.Y, box.Top, box.Bottom), leader);
            }

            lettering.WriteMiddleRimmed(
                canvas, fixture.Name, box.CentreX, box.CentreY, Palette.SoftInk, Palette.Paper.WithAlpha(220), view.Points(1.4), SKTextAlign.Center);
        }
    }

    private LabelRequest RequestFor(Fixture fixture, Lettering lettering) => new(
        view.PixelX(fixture.Centre.X),
        view.PixelY(fixture.Centre.Y),
        view.Metres(Math.Min(fixture.SizeX, fixture.SizeY) / 2),
        lettering.WidthOf(fixture.Name) + view.Points(3),
        lettering.CapHeight + view.Points(4));

    private bool IsWithin(Fixture fixture, LabelBox box)
    {
        var outline = new Polygon(FixtureShape.CornersOf(fixture));
        bool Holds(double x, double y) => outline.Contains(new(view.MetresX(x), view.MetresY(y)));
        return Holds(box.Left, box.Top) && Holds(box.Right, box.Top) && Holds(box.Left, box.Bottom) && Holds(box.Right, box.Bottom);
    }

    private Lettering Letters() => new(view.Points(SizePoints), isBold: false);
}
