using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Marks;

/// <summary>Names of fixtures, on or beside them, in small letters without a box.</summary>
internal sealed class FixtureNames
{
    private const double SizePoints = 9;
    private const double LinePoints = 66;
    private const double LineShare = 0.88;
    private const double PadPoints = 2;

    private readonly PlanView view;
    private readonly List<(Fixture Fixture, IReadOnlyList<string> Lines, PlacedLabel Place)> placed = [];

    /// <summary>Finds places: inside the fixture if the name fits, otherwise beside it.</summary>
    /// <param name="view">The view.</param>
    /// <param name="fixtures">The fixtures.</param>
    /// <param name="hard">Ground that names may not cover, pixels.</param>
    /// <param name="soft">Ground that names should not cover, pixels.</param>
    /// <param name="ground">Ground that names may not cover, but that lines to them may cross, pixels; null for none.</param>
    /// <param name="key">Takes the names without a free place near their fixture; null to write every name.</param>
    public FixtureNames(
        PlanView view,
        IReadOnlyList<Fixture> fixtures,
        IReadOnlyList<LabelBox> hard,
        IReadOnlyList<LabelBox> soft,
        IReadOnlyList<LabelBox>? ground = null,
        NumberedKey? key = null)
    {
        this.view = view;
        using Lettering lettering = Letters();
        var outside = new List<(Fixture Fixture, IReadOnlyList<string> Lines)>();
        BoxIndex inTheWay = new(hard.Concat(ground ?? []));
        foreach (Fixture fixture in fixtures.Where(f => !string.IsNullOrWhiteSpace(f.Name)))
        {
            IReadOnlyList<string> lines = LinesOf(fixture.Name, lettering);
            LabelRequest request = RequestFor(fixture, lines, lettering);
            LabelBox middle = LabelBox.Around(request.X, request.Y, request.Width / 2, request.Height / 2);
            if (IsWithin(fixture, middle) && !inTheWay.Overlaps(middle))
            {
                placed.Add((fixture, lines, new(middle, HasLeader: false)));
                inTheWay.Add(middle);
            }
            else
            {
                outside.Add((fixture, lines));
            }
        }

        LabelBox[] taken = [.. hard, .. Taken];
        LabelPlacer Placer() => new(view.Frame.Grown(-view.Points(2)), taken, soft, view.Points(2), ground);
        if (key is null)
        {
            IReadOnlyList<PlacedLabel> places = Placer().Place([.. outside.Select(o => RequestFor(o.Fixture, o.Lines, lettering))]);
            placed.AddRange(outside.Zip(places, (o, place) => (o.Fixture, o.Lines, place)));
            return;
        }

        IReadOnlyList<(string Text, PlacedLabel Place)?> named = key.Place(
            [.. outside.Select(o => o.Fixture.Name)],
            (i, text) => RequestFor(outside[i].Fixture, LinesFor(i, text), lettering) is var request && text == outside[i].Fixture.Name
                ? request
                : request with { MarkRadius = 0 }, // a number may be on its fixture
            Placer,
            mayCrossGround: false);
        for (int i = 0; i < outside.Count; i++)
        {
            if (named[i] is (string text, PlacedLabel place))
            {
                placed.Add((outside[i].Fixture, LinesFor(i, text), place));
            }
        }

        IReadOnlyList<string> LinesFor(int i, string text) => text == outside[i].Fixture.Name ? outside[i].Lines : [text];
    }

    /// <summary>Ground under the names, pixels.</summary>
    public IEnumerable<LabelBox> Taken => placed.Select(p => p.Place.Box);

    public void Draw(SKCanvas canvas)
    {
        using Lettering lettering = Letters();
        using SKPaint leader = Pen.Line(Palette.SoftInk, view.Points(0.6));
        SKColor rim = Palette.Paper.WithAlpha(220);
        foreach ((Fixture fixture, IReadOnlyList<string> lines, PlacedLabel place) in placed)
        {
            LabelBox box = place.Box;
            SKPoint from = view.Pixel(fixture.Centre);
            if (place.HasLeader)
            {
                double toX = Math.Clamp(from.X, box.Left, box.Right), toY = Math.Clamp(from.Y, box.Top, box.Bottom);
                canvas.DrawLine(from, new SKPoint((float)toX, (float)toY), leader);
            }

            double y = box.Top + view.Points(PadPoints) + (lettering.CapHeight / 2);
            foreach (string line in lines)
            {
                lettering.WriteMiddleRimmed(
                    canvas, line, box.CentreX, y, Palette.SoftInk, rim, view.Points(1.4), SKTextAlign.Center);
                y += LineShare * lettering.LineHeight;
            }
        }
    }

    // A long name is written in two lines; a longer one is truncated.
    private List<string> LinesOf(string name, Lettering lettering)
    {
        IReadOnlyList<string> lines = lettering.Wrap(name, view.Points(LinePoints));
        return lines.Count <= 2
            ? [.. lines]
            : [lines[0], lettering.Fitted(string.Join(' ', lines.Skip(1)), view.Points(LinePoints))];
    }

    private LabelRequest RequestFor(Fixture fixture, IReadOnlyList<string> lines, Lettering lettering) => new(
        view.PixelX(fixture.Centre.X),
        view.PixelY(fixture.Centre.Y),
        view.Metres(Math.Min(fixture.SizeX, fixture.SizeY) / 2),
        lines.Max(lettering.WidthOf) + view.Points(2 * PadPoints),
        ((lines.Count - 1) * LineShare * lettering.LineHeight) + lettering.CapHeight + view.Points(2 * PadPoints));

    private bool IsWithin(Fixture fixture, LabelBox box)
    {
        var outline = new Polygon(fixture.Corners());
        bool Holds(double x, double y) => outline.Contains(new(view.MetresX(x), view.MetresY(y)));
        return Holds(box.Left, box.Top)
            && Holds(box.Right, box.Top)
            && Holds(box.Left, box.Bottom)
            && Holds(box.Right, box.Bottom);
    }

    private Lettering Letters() => new(view.Points(SizePoints), isBold: false);
}

/// <summary>Draws the names of fixtures at their places.</summary>
internal sealed class FixtureNameLayer(PlanView view, FixtureNames names) : PlanLayer(view)
{
    protected override void Draw(SKCanvas canvas) => names.Draw(canvas);
}
