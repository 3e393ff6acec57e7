using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Contours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;

namespace LinkMargin.Plots.Maps;

/// <summary>The positions of the maps on a sheet: a column for each spot, a row for each level with the highest on top.</summary>
internal sealed class SheetLayout
{
    private const double GapPoints = 10;

    /// <summary>Height of column headings, points.</summary>
    public const double HeadPoints = 19;

    /// <summary>Height of the verdicts below columns, points: one large line, two small ones.</summary>
    public const double VerdictPoints = 46;

    /// <summary>Width of row headings, points.</summary>
    public const double SidePoints = 17;

    private readonly double pixelsPerPoint;
    private readonly LabelBox grid;
    private readonly PlanBounds bounds;

    /// <summary>Lays out the maps in the body of a page.</summary>
    public SheetLayout(SheetRequest request, LabelBox body, double keyPixels, double pixelsPerPoint)
    {
        this.pixelsPerPoint = pixelsPerPoint;
        (Spots, Levels) = (SpotsOf(request), LevelsOf(request));
        bounds = PlanBounds.Of(request.House);
        grid = new(
            body.Left + ((SidePoints + PlanPlot.LeftFiguresPoints) * pixelsPerPoint),
            body.Top + (HeadPoints * pixelsPerPoint),
            body.Right - ((ColourBar.WidthPoints + GapPoints) * pixelsPerPoint),
            body.Bottom - keyPixels - (BelowPoints(request) * pixelsPerPoint));
        double width = (grid.Width - ((Spots.Count - 1) * Gap)) / Spots.Count;
        double height = (grid.Height - ((Levels.Count - 1) * Gap)) / Levels.Count;
        PanelWidth = width;
        PanelHeight = height;
    }

    /// <summary>Spots from left to right.</summary>
    public IReadOnlyList<Spot> Spots { get; }

    /// <summary>Numbers of levels from top to bottom.</summary>
    public IReadOnlyList<int> Levels { get; }

    /// <summary>The area of the colour bar.</summary>
    public LabelBox Bar
    {
        get
        {
            PlanView first = View(0, 0), last = View(Spots.Count - 1, Levels.Count - 1);
            double left = last.Frame.Right + (GapPoints * pixelsPerPoint);
            return new(left, first.Frame.Top, left + (ColourBar.WidthPoints * pixelsPerPoint), last.Frame.Bottom);
        }
    }

    private double PanelWidth { get; }

    private double PanelHeight { get; }

    private double Gap => GapPoints * pixelsPerPoint;

    /// <summary>The size for maps of a given width, without empty space around them.</summary>
    /// <param name="request">What to draw.</param>
    /// <param name="panelPoints">Width of one map, points.</param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point.</param>
    /// <param name="keyPixels">Gives the height of the key for a scale, pixels per metre, and a width, pixels.</param>
    public static PictureSize FittingSize(
        SheetRequest request, double panelPoints, double pixelsPerPoint, Func<double, double, double> keyPixels)
    {
        PlanBounds bounds = PlanBounds.Of(request.House);
        int columns = SpotsOf(request).Count, rows = LevelsOf(request).Count;
        double width = (columns * panelPoints) + ((columns - 1) * GapPoints) + GapPoints + ColourBar.WidthPoints
            + SidePoints + PlanPlot.LeftFiguresPoints + (2 * Page.MarginPoints);
        int widthPixels = PictureSize.NearestAllowed(width * pixelsPerPoint, pixelsPerPoint);
        double scale = panelPoints * pixelsPerPoint / bounds.WidthMetres;
        double body = widthPixels - (2 * Page.MarginPoints * pixelsPerPoint);
        double key = keyPixels(scale, body);
        double height = (rows * scale * bounds.HeightMetres)
            + ((((rows - 1) * GapPoints) + HeadPoints + BelowPoints(request)) * pixelsPerPoint)
            + key + Page.FurniturePixels(widthPixels, pixelsPerPoint, request.Title, request.Caption);
        return new(widthPixels, PictureSize.NearestAllowed(height, pixelsPerPoint), pixelsPerPoint);
    }

    /// <summary>The view of the map in a column and a row. All views have the same scale.</summary>
    public PlanView View(int column, int row)
    {
        double left = grid.Left + (column * (PanelWidth + Gap)), top = grid.Top + (row * (PanelHeight + Gap));
        return PlanPlot.ViewIn(new(left, top, left + PanelWidth, top + PanelHeight), bounds, pixelsPerPoint);
    }

    /// <summary>The view of the map of a field.</summary>
    public PlanView ViewOf(Field field) =>
        View(Spots.ToList().IndexOf(field.Spot), Levels.ToList().IndexOf(field.LevelIndex));

    // Between the lowest maps and the key.
    private static double BelowPoints(SheetRequest request) =>
        PlanPlot.BottomFiguresPoints + GapPoints + (request.Verdicts.Count > 0 ? VerdictPoints : 0);

    private static List<Spot> SpotsOf(SheetRequest request) => [.. request.Maps.Select(m => m.Field.Spot).Distinct()];

    private static List<int> LevelsOf(SheetRequest request) =>
        [.. request.Maps.Select(m => m.Field.LevelIndex).Distinct().OrderDescending()];
}
