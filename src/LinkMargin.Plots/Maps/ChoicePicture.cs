using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Building;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Contours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Marks;
using SkiaSharp;

namespace LinkMargin.Plots.Maps;

/// <summary>The map of the choice: all levels side by side, lowest on the left, with one colour scale.</summary>
public static class ChoicePicture
{
    private const double BetweenPoints = 10;
    private const double BesideBarPoints = 12;
    private const double HeadPoints = 19;
    private const double HeadLetterPoints = 12;
    private const double BeforeKeyPoints = 4;

    // The values are dB above what the weakest seat requires; at 0 it just passes.
    private const double JustPassesDb = 0;

    /// <summary>The size that leaves no empty space around the plans.</summary>
    /// <param name="request">What to draw.</param>
    /// <param name="planPoints">Width of one plan, points; null for 400, for 570 with only one, or for less with a narrow house.</param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point.</param>
    public static PictureSize FittingSize(ChoiceRequest request, double? planPoints = null, double pixelsPerPoint = 2.5)
    {
        PlanBounds bounds = PlanBounds.Of(request.House);
        double each = planPoints ?? bounds.SensibleWidth(request.Fields.Count > 1 ? 400 : 570);
        double width = (request.Fields.Count * each) + ((request.Fields.Count - 1) * BetweenPoints) + PlanPlot.LeftFiguresPoints
            + BesideBarPoints + ColourBar.WidthPoints + (2 * Page.MarginPoints);
        int widthPixels = PictureSize.NearestAllowed(width * pixelsPerPoint, pixelsPerPoint);
        double scale = each * pixelsPerPoint / bounds.WidthMetres;
        double body = widthPixels - (2 * Page.MarginPoints * pixelsPerPoint);
        double height = (scale * bounds.HeightMetres)
            + ((HeadPoints + PlanPlot.BottomFiguresPoints + BeforeKeyPoints) * pixelsPerPoint)
            + Key(request, scale, body, pixelsPerPoint).HeightPixels
            + Page.FurniturePixels(widthPixels, pixelsPerPoint, request.Title, request.Caption);
        return new(widthPixels, PictureSize.NearestAllowed(height, pixelsPerPoint), pixelsPerPoint);
    }

    /// <summary>Draws a PNG.</summary>
    public static byte[] Render(ChoiceRequest request, PictureSize size)
    {
        if (request.Fields.Count == 0)
        {
            throw new ArgumentException("A map of the choice needs at least one level.", nameof(request));
        }

        double s = size.PixelsPerPoint;
        using var page = new Page(size, request.Title, request.Caption);
        PlanBounds bounds = PlanBounds.Of(request.House);
        LabelBox body = page.Body;
        int count = request.Fields.Count;
        double left = body.Left + (PlanPlot.LeftFiguresPoints * s), between = BetweenPoints * s;
        double right = body.Right - ((ColourBar.WidthPoints + BesideBarPoints) * s);
        double width = (right - left - ((count - 1) * between)) / count;
        double key = Key(request, width / bounds.WidthMetres, body.Width, s).HeightPixels;
        double top = body.Top + (HeadPoints * s), bottom = body.Bottom - key - ((PlanPlot.BottomFiguresPoints + BeforeKeyPoints) * s);
        var colours = new MarginColours(ColourRange.Covering(request.Fields, JustPassesDb), request.StepDb);
        var panel = new MapPanel(request.House, colours, JustPassesDb, MapStyle.Choice)
        {
            Zones = request.House.Zones.ToLookup(zone => zone.LevelIndex, zone => zone.Outline),
        };
        PlanView view = null!;
        for (int i = 0; i < count; i++)
        {
            double x = left + (i * (width + between));
            view = PlanPlot.ViewIn(new(x, top, x + width, Math.Max(top + 1, bottom)), bounds, s);
            var plot = new PlanPlot(view, request.Unit) { HasLeftFigures = i == 0 };
            Field field = request.Fields[i];
            panel.Fill(plot, field, field, [.. MapMarks.OfChoice(request.House, field.LevelIndex, request.Marks)], []);
            plot.Draw(page.Canvas);
            Level level = request.House.Levels[field.LevelIndex];
            using Lettering bold = new(HeadLetterPoints * s, isBold: true);
            bold.WriteMiddle(page.Canvas, bold.Fitted(level.Name, view.Frame.Width), view.Frame.Left, view.Frame.Top - (HeadPoints * s / 2), Palette.Ink);
        }

        double barLeft = view.Frame.Right + (BesideBarPoints * s);
        new ColourBar(colours, JustPassesDb, s) { Heading = "weakest seat", Line = "required" }.Draw(
            page.Canvas, new(barLeft, view.Frame.Top, barLeft + (ColourBar.WidthPoints * s), view.Frame.Bottom));
        KeyStrip strip = Key(request, view.PixelsPerMetre, body.Width, s);
        strip.Draw(page.Canvas, body.Left, body.Bottom - strip.HeightPixels);
        return page.ToPng();
    }

    private static KeyStrip Key(ChoiceRequest request, double pixelsPerMetre, double widthPixels, double pixelsPerPoint) => new(
        ChoiceKey.Entries(request.House, pixelsPerMetre, pixelsPerPoint, request.Unit), widthPixels, pixelsPerPoint);
}

/// <summary>Everything on a map of the choice: the margin of the weakest seat for a console anywhere on the floor.</summary>
/// <param name="House">The house.</param>
/// <param name="Fields">One for each level to show, in dB above what the weakest seat requires.</param>
/// <param name="Marks">Places to show.</param>
/// <param name="Title">One line above the maps.</param>
/// <param name="Caption">One sentence below them.</param>
public sealed record ChoiceRequest(House House, IReadOnlyList<Field> Fields, IReadOnlyList<ChoiceMark> Marks, string Title, string Caption)
{
    /// <summary>The unit of axes and scale bar.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Metre;

    /// <summary>Step between contour lines and colours, dB, above 0.</summary>
    public double StepDb { get; init; } = 5;
}

/// <summary>A place for a console, found or named, on a map of the choice.</summary>
/// <param name="LevelIndex">The level it is on; 0 is the lowest.</param>
/// <param name="Plan">Its position on the plan.</param>
/// <param name="Name">Its name.</param>
/// <param name="Figure">The headroom of its weakest seat, a signed number in dB, as in text output.</param>
/// <param name="IsNamed">Whether it is a spot of the house file, not a place that was found.</param>
public sealed record ChoiceMark(int LevelIndex, Point2 Plan, string Name, string Figure, bool IsNamed);

/// <summary>The key of a map of the choice; only symbols that occur.</summary>
internal static class ChoiceKey
{
    public static IReadOnlyList<KeyEntry> Entries(House house, double pixelsPerMetre, double pixelsPerPoint, LengthUnit unit)
    {
        var entries = new List<KeyEntry>
        {
            NorthArrow.For(pixelsPerPoint),
            ScaleBar.For(pixelsPerMetre, pixelsPerPoint, unit),
            MapKey.Mark(MarkKind.SpotHere, "place found", pixelsPerPoint),
            MapKey.Mark(MarkKind.SpotElsewhere, "spot of the house file", pixelsPerPoint),
            MapKey.Mark(MarkKind.SeatPlain, "seat", pixelsPerPoint),
            new(20, "hatched: some seat does not pass", (canvas, box) => MapKey.DrawHatch(canvas, box, pixelsPerPoint)),
        };
        entries.AddRange(PartHeightWalls.Entries(house.Levels, unit, isDashed: false, pixelsPerPoint));
        if (house.Zones.Count > 0)
        {
            entries.Add(new(20, "zone where a console may stand", (canvas, box) =>
            {
                using SKPath outline = new();
                outline.AddRect(new SKRect((float)box.Left, (float)box.Top, (float)box.Right, (float)box.Bottom));
                ZoneLayer.DrawOne(canvas, outline, pixelsPerPoint);
            }));
        }

        entries.Add(new(0, "figures: dB above or below what the weakest seat requires", (_, _) => { }));
        return entries;
    }
}

/// <summary>Draws zones: an outline in the spot's colour with a light edge.</summary>
internal sealed class ZoneLayer(PlanView view, IReadOnlyList<Polygon> zones) : PlanLayer(view)
{
    /// <summary>Draws one zone.</summary>
    public static void DrawOne(SKCanvas canvas, SKPath outline, double pixelsPerPoint)
    {
        using SKPaint casing = Pen.Line(Palette.Paper, 3 * pixelsPerPoint);
        using SKPaint line = Pen.Line(Palette.Spot, 1.2 * pixelsPerPoint);
        canvas.DrawPath(outline, casing);
        canvas.DrawPath(outline, line);
    }

    protected override void Draw(SKCanvas canvas)
    {
        foreach (Polygon zone in zones)
        {
            using SKPath outline = View.Outline(zone.Corners);
            DrawOne(canvas, outline, View.PixelsPerPoint);
        }
    }
}
