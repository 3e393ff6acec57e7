using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Contours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Marks;

namespace LinkMargin.Plots.Maps;

/// <summary>The map of one spot on one level.</summary>
public static class MapPicture
{
    private const double BesideBarPoints = 12;
    private const double BeforeKeyPoints = 4;

    /// <summary>The size that leaves no empty space around the plan.</summary>
    /// <param name="request">What to draw.</param>
    /// <param name="mapPoints">Width of the map alone, points; null for 570, or less for a narrow house.</param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point.</param>
    public static PictureSize FittingSize(MapRequest request, double? mapPoints = null, double pixelsPerPoint = 2.5)
    {
        PlanBounds bounds = PlanBounds.Of(request.House);
        double beside = (2 * Page.MarginPoints) + PlanPlot.LeftFiguresPoints + BesideBarPoints + ColourBar.WidthPoints;
        int widthPixels = PictureSize.NearestAllowed(
            ((mapPoints ?? bounds.SensibleWidth(570)) + beside) * pixelsPerPoint, pixelsPerPoint);
        double margins = Page.FurniturePixels(widthPixels, pixelsPerPoint, request.Title, request.Caption);
        double scale = (widthPixels - (beside * pixelsPerPoint)) / bounds.WidthMetres;

        // Which seats are numbers hangs on the map's size, not on the picture's height.
        PlanView view = PlanPlot.ViewIn(new(0, 0, scale * bounds.WidthMetres, scale * bounds.HeightMetres), bounds, pixelsPerPoint);
        double key = Key(request, NumbersOf(request, view), scale, widthPixels - (2 * Page.MarginPoints * pixelsPerPoint), pixelsPerPoint).HeightPixels;
        double below = key + ((PlanPlot.BottomFiguresPoints + BeforeKeyPoints) * pixelsPerPoint);
        double height = (scale * bounds.HeightMetres) + below + margins;
        return new(widthPixels, PictureSize.NearestAllowed(height, pixelsPerPoint), pixelsPerPoint);
    }

    /// <summary>Draws a PNG.</summary>
    public static byte[] Render(MapRequest request, PictureSize size)
    {
        double s = size.PixelsPerPoint;
        using var page = new Page(size, request.Title, request.Caption);
        PlanBounds bounds = PlanBounds.Of(request.House);
        LabelBox body = page.Body;
        double right = body.Right - ((ColourBar.WidthPoints + BesideBarPoints) * s);

        // The key's height depends on the scale bar's length, which depends on the scale: one iteration is enough.
        IReadOnlyList<SeatNumber> numbers = [];
        KeyStrip key = Key(request, numbers, (right - body.Left) / bounds.WidthMetres, body.Width, s);
        PlanView view = ViewAbove(key);
        for (int round = 0; round < 2; round++)
        {
            // The same holds for the seats that the key lists by number.
            numbers = NumbersOf(request, view);
            key = Key(request, numbers, view.PixelsPerMetre, body.Width, s);
            PlanView before = view;
            view = ViewAbove(key);
            if (view == before)
            {
                break;
            }
        }

        var colours = new MarginColours(request.Range, request.StepDb);

        var plot = new PlanPlot(view, request.Unit);
        MapContent content = ContentOf(request);
        PanelOf(request).Fill(plot, request.Field, request.Hatched ?? request.Field, MarksOf(request, numbers), content.AlsoRequiredDb);
        plot.Draw(page.Canvas);
        double barLeft = view.Frame.Right + (BesideBarPoints * s);
        new ColourBar(colours, request.RequiredDb, s) 
        {
            Heading = request.IsHatchedByAnother ? "median" : "margin",
            IsHatched = !request.IsHatchedByAnother,
            AlsoRequiredDb = content.AlsoRequiredDb,
        }.Draw(
            page.Canvas, new(barLeft, view.Frame.Top, barLeft + (ColourBar.WidthPoints * s), view.Frame.Bottom));
        key.Draw(page.Canvas, body.Left, body.Bottom - key.HeightPixels);
        return page.ToPng();

        PlanView ViewAbove(KeyStrip below) => PlanPlot.ViewIn(
            new(
                body.Left + (PlanPlot.LeftFiguresPoints * s),
                body.Top,
                right,
                body.Bottom - below.HeightPixels - ((PlanPlot.BottomFiguresPoints + BeforeKeyPoints) * s)),
            bounds,
            s);
    }

    /// <summary>The seats that stand on a map as numbers, in a view of it.</summary>
    internal static IReadOnlyList<SeatNumber> NumbersOf(MapRequest request, PlanView view) => SeatNumbers.Of(
        [.. request.Seats.Select(mark => mark.Seat)],
        numbers => PanelOf(request).LabelsOf(view, request.Field.LevelIndex, MarksOf(request, numbers)).Crowded);

    /// <summary>The marks of a map.</summary>
    internal static PlanMark[] MarksOf(MapRequest request, IReadOnlyList<SeatNumber> numbers) =>
        [.. MapMarks.OfSpot(request.House, request.Field, request.Seats, hasSpotLabel: true, numbers)];

    /// <summary>What draws a map.</summary>
    internal static MapPanel PanelOf(MapRequest request) =>
        new(request.House, new MarginColours(request.Range, request.StepDb), request.RequiredDb, MapStyle.Single);

    private static KeyStrip Key(MapRequest request, IReadOnlyList<SeatNumber> numbers, double pixelsPerMetre, double widthPixels, double pixelsPerPoint) => new(
        [.. MapKey.Entries(ContentOf(request), pixelsPerMetre, pixelsPerPoint), .. SeatNumbers.Entries(numbers, pixelsPerPoint)],
        widthPixels,
        pixelsPerPoint);

    private static MapContent ContentOf(MapRequest request) =>
        MapContent.Of(request.House, [request.Field], request.Seats, request.RequiredDb, request.Unit) with { IsHatchedByAnother = request.IsHatchedByAnother };
}
