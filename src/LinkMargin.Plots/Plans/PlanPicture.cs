using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Building;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Marks;
using LinkMargin.Plots.Paths;
using SkiaSharp;

namespace LinkMargin.Plots.Plans;

/// <summary>The plan of a house as its file describes it, which shows a mistyped wall.</summary>
public static class PlanPicture
{
    private const double BetweenPoints = 12;
    private const double HeadPoints = 32;
    private const double HeadLetterPoints = 12;
    private const double HeadFigurePoints = 9.5;
    private const double BeforeKeyPoints = 6;

    // At most this many plans are in one row; more are put in several rows, about half as many rows as columns.
    private const int MostInRow = 5;
    private const double ColumnsForRow = 2;
    private const double BetweenRowsPoints = 16;

    // A plan with less ground per name than this is enlarged, up to twice, within a limit for all plans together.
    private const double SquarePointsForName = 800;
    private const double MostEnlarged = 2;
    private const double MostPixels = 24e6;

    // A key of names may take up this share of a picture whose size is given.
    private const double MostKeyShare = 0.4;

    /// <summary>The size for plans of a given width, without empty space around them.</summary>
    /// <param name="request">What to draw.</param>
    /// <param name="planPoints">
    /// Width of one plan, points; null for 560 with one plan, 400 with several, less for a narrow house
    /// or very many levels, more if names are crowded.
    /// </param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point.</param>
    public static PictureSize FittingSize(PlanRequest request, double? planPoints = null, double pixelsPerPoint = 2.5)
    {
        PlanBounds bounds = PlanBounds.Of(request.House);
        double each = planPoints ?? SensiblePoints(request, bounds, pixelsPerPoint);
        int columns = ColumnsOf(request.Levels.Count);
        double width = (columns * (each + DimensionChain.DepthPoints)) + ((columns - 1) * BetweenPoints)
            + PlanPlot.LeftFiguresPoints + (2 * Page.MarginPoints);
        int widthPixels = PictureSize.NearestAllowed(width * pixelsPerPoint, pixelsPerPoint);
        double body = widthPixels - (2 * Page.MarginPoints * pixelsPerPoint);
        double plans = PlansHeight(request, bounds, each * pixelsPerPoint, pixelsPerPoint);

        // Which names have no place is known only once the plans are laid out; their key comes below.
        var patterns = new MaterialPatterns(request.House);
        var top = new LabelBox(0, 0, body, plans);
        double key = Keys(request, patterns, Laid(request, patterns, top, bounds, pixelsPerPoint), body, pixelsPerPoint, null).Height;
        double height = plans + (BeforeKeyPoints * pixelsPerPoint) + key
            + (SectionOf(request, each * pixelsPerPoint / bounds.WidthMetres, body, pixelsPerPoint)?.HeightPixels ?? 0)
            + Page.FurniturePixels(widthPixels, pixelsPerPoint, request.Title, request.Caption);
        return new(widthPixels, PictureSize.NearestAllowed(height, pixelsPerPoint), pixelsPerPoint);
    }

    /// <summary>Draws a PNG.</summary>
    public static byte[] Render(PlanRequest request, PictureSize size)
    {
        using Page page = Drawn(request, size, isVector: false);
        return page.ToPng();
    }

    /// <summary>Draws the same as vector graphics.</summary>
    public static VectorPicture Vector(PlanRequest request, PictureSize size)
    {
        using Page page = Drawn(request, size, isVector: true);
        return page.ToVector();
    }

    private static Page Drawn(PlanRequest request, PictureSize size, bool isVector)
    {
        double s = size.PixelsPerPoint;
        var page = new Page(size, request.Title, request.Caption, isVector);
        PlanBounds bounds = PlanBounds.Of(request.House);
        var patterns = new MaterialPatterns(request.House);
        LabelBox body = page.Body;
        if (SectionOf(request, WidthOfEach(request, body, s) / bounds.WidthMetres, body.Width, s) is { } section)
        {
            body = body with { Bottom = Math.Max(body.Top + 1, body.Bottom - section.HeightPixels) };
            section.Draw(page.Canvas, body.Left, body.Bottom, (_, _) => []);
        }

        Sheet sheet = Fitted(request, patterns, bounds, body, s);
        foreach ((PlanPlot plot, Level level) in sheet.Laid.Plots)
        {
            plot.Draw(page.Canvas);
            new DimensionChain(plot.View, level, request.Unit).Draw(page.Canvas);
            DrawHead(page.Canvas, level, plot.View, request.Unit);
        }

        double y = body.Bottom - sheet.Keys.Height;
        foreach (KeyStrip strip in sheet.Keys.Strips)
        {
            strip.Draw(page.Canvas, body.Left, y);
            y += strip.HeightPixels;
        }

        return page;
    }

    // Below the key of the plans.
    private static SectionStrip? SectionOf(PlanRequest request, double pixelsPerMetre, double widthPixels, double s) => request.Cut is { } cut
        ? new(
            new(request.House, EndOf(cut.From, cut.FromConsole ? MarkKind.SpotHere : MarkKind.CableEnd), EndOf(cut.To, MarkKind.CableEnd))
            {
                Runs = request.Runs, RunColour = Palette.Spot, Unit = request.Unit,
            },
            pixelsPerMetre,
            widthPixels,
            s)
        : null;

    private static SectionEnd EndOf(CablePlace place, MarkKind kind) => new(kind, place.Name, place.LevelIndex, place.Plan, place.HeightMetres);

    private static double AroundPlanPoints => HeadPoints + DimensionChain.DepthPoints + PlanPlot.BottomFiguresPoints;

    private static int ColumnsOf(int levels) =>
        levels <= MostInRow ? levels : (int)Math.Ceiling(Math.Sqrt(levels * ColumnsForRow));

    private static int RowsOf(int levels) => (levels + ColumnsOf(levels) - 1) / ColumnsOf(levels);

    private static double SensiblePoints(PlanRequest request, PlanBounds bounds, double pixelsPerPoint)
    {
        double each = bounds.SensibleWidth(request.Levels.Count > 1 ? 400 : 560);
        double high = bounds.HeightMetres / bounds.WidthMetres;
        House house = request.House;
        int names = request.Levels.Max(l => house.Fixtures.Count(f => f.LevelIndex == l)
            + house.Spots.Count(p => p.LevelIndex == l)
            + house.Seats.Count(p => p.LevelIndex == l));
        double enlarged = Math.Clamp(Math.Sqrt(names * SquarePointsForName / (each * each * high)), 1, MostEnlarged);
        double most = Math.Sqrt(MostPixels / request.Levels.Count / high) / pixelsPerPoint;
        return Math.Min(each * enlarged, Math.Max(most, PictureSize.LeastPoints / 2));
    }

    /// <summary>The plans as large as possible with their keys below; the height of the keys depends on the plans' scale.</summary>
    private static Sheet Fitted(PlanRequest request, MaterialPatterns patterns, PlanBounds bounds, LabelBox body, double s)
    {
        const int MostRounds = 4;

        // What is left below plans of the full width: exactly the key's height if the size is the fitting one.
        double free = body.Height - PlansHeight(request, bounds, WidthOfEach(request, body, s), s) - (BeforeKeyPoints * s);
        double most = Math.Max(free, MostKeyShare * body.Height);
        double reserved = Math.Max(0, free);
        for (int round = 1; ; round++)
        {
            double bottom = Math.Max(body.Top + 1, body.Bottom - reserved - (BeforeKeyPoints * s));
            LaidPlans laid = Laid(request, patterns, body with { Bottom = bottom }, bounds, s);
            (IReadOnlyList<KeyStrip> Strips, double Height) keys = Keys(request, patterns, laid, body.Width, s, most);
            if (keys.Height <= reserved || round == MostRounds)
            {
                return new(laid, keys);
            }

            reserved = keys.Height;
        }
    }

    private static double WidthOfEach(PlanRequest request, LabelBox body, double s)
    {
        int columns = ColumnsOf(request.Levels.Count);
        double plans = body.Width - (PlanPlot.LeftFiguresPoints * s) - ((columns - 1) * BetweenPoints * s);
        return (plans / columns) - (DimensionChain.DepthPoints * s);
    }

    private static double PlansHeight(PlanRequest request, PlanBounds bounds, double widthOfEach, double s)
    {
        int rows = RowsOf(request.Levels.Count);
        double high = widthOfEach * bounds.HeightMetres / bounds.WidthMetres;
        return (rows * (high + (AroundPlanPoints * s))) + ((rows - 1) * BetweenRowsPoints * s);
    }

    private static LaidPlans Laid(PlanRequest request, MaterialPatterns patterns, LabelBox body, PlanBounds bounds, double s)
    {
        int count = request.Levels.Count, columns = ColumnsOf(count), rows = RowsOf(count);
        double left = body.Left + (PlanPlot.LeftFiguresPoints * s);
        double depth = DimensionChain.DepthPoints * s, between = BetweenPoints * s, width = WidthOfEach(request, body, s);
        double row = (body.Height - ((rows - 1) * BetweenRowsPoints * s)) / rows;
        var panel = new PlanPanel(request.House, patterns, request.Unit, request.Measurements) { Runs = request.Runs };
        var names = new NumberedKey();
        List<(PlanPlot, Level)> plots = [];
        double scale = 1;
        for (int i = 0; i < count; i++)
        {
            double x = left + (i % columns * (width + depth + between));
            double over = body.Top + (i / columns * (row + (BetweenRowsPoints * s)));
            double top = over + ((HeadPoints + DimensionChain.DepthPoints) * s), bottom = over + row - (PlanPlot.BottomFiguresPoints * s);
            PlanView view = PlanPlot.ViewIn(new(x, top, x + width, Math.Max(top + 1, bottom)), bounds, s);
            scale = view.PixelsPerMetre;
            var plot = new PlanPlot(view, request.Unit) { HasLeftFigures = i % columns == 0 };
            panel.Fill(plot, request.Levels[i], names);
            plots.Add((plot, request.House.Levels[request.Levels[i]]));
        }

        return new(plots, names, scale);
    }

    private static (IReadOnlyList<KeyStrip> Strips, double Height) Keys(
        PlanRequest request, MaterialPatterns patterns, LaidPlans laid, double widthPixels, double s, double? mostPixels)
    {
        KeyStrip signs = new(PlanKey.Entries(request, patterns, laid.PixelsPerMetre, s), widthPixels, s);
        IReadOnlyList<KeyStrip> strips = [signs];
        int shown = laid.Names.Names.Count;
        if (shown + laid.Names.Unlabelled > 0)
        {
            KeyStrip names = NamesKey(shown);
            if (mostPixels is double most && signs.HeightPixels + names.HeightPixels > most)
            {
                names = NamesKey(MostThatFit(shown, count => signs.HeightPixels + NamesKey(count).HeightPixels <= most));
            }

            strips = [signs, names];
        }

        return (strips, strips.Sum(k => k.HeightPixels));

        KeyStrip NamesKey(int count) => new(PlanKey.Names(laid.Names, count, s), widthPixels, s, inColumns: true);
    }

    /// <summary>The greatest count below a limit that fits, by bisection; 0 if none does.</summary>
    private static int MostThatFit(int limit, Func<int, bool> fits)
    {
        int least = 0;
        while (limit - least > 1)
        {
            int middle = (least + limit) / 2;
            (least, limit) = fits(middle) ? (middle, limit) : (least, middle);
        }

        return least;
    }

    private sealed record LaidPlans(IReadOnlyList<(PlanPlot Plot, Level Level)> Plots, NumberedKey Names, double PixelsPerMetre);

    private sealed record Sheet(LaidPlans Laid, (IReadOnlyList<KeyStrip> Strips, double Height) Keys);

    private static void DrawHead(SKCanvas canvas, Level level, PlanView view, LengthUnit unit)
    {
        using Lettering bold = new(view.Points(HeadLetterPoints), isBold: true);
        using Lettering plain = new(view.Points(HeadFigurePoints), isBold: false);
        string Length(double metres) => LengthTicks.Written(metres, unit) + (unit == LengthUnit.Metre ? " m" : "");
        string figures = $"floor at {Length(level.ElevationMetres)}, clear height {Length(level.HeightMetres)}"
            + (level.Above is FloorAbove above ? $", under {above.BuildUp.Name}" : "")
            + (level.Above?.Joists is JoistLayout joists ? $", joists {Length(joists.SpacingMetres)} apart" : "");
        double top = view.Frame.Top - view.Points(DimensionChain.DepthPoints + HeadPoints);
        bold.WriteMiddle(canvas, bold.Fitted(level.Name, view.Frame.Width), view.Frame.Left, top + view.Points(7), Palette.Ink);
        plain.WriteMiddle(
            canvas, plain.Fitted(figures, view.Frame.Width), view.Frame.Left, top + view.Points(21), Palette.SoftInk);
    }
}
