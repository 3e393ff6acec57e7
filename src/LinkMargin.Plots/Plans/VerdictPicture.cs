using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Building;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Maps;
using LinkMargin.Plots.Marks;

namespace LinkMargin.Plots.Plans;

/// <summary>
/// The plan for a reader who only wants to know what works: the chosen spot, and each seat with its number and whether it
/// passes. All levels side by side, lowest on the left, as large as a given width allows.
/// </summary>
public static class VerdictPicture
{
    private const double BetweenPoints = 10;
    private const double HeadPoints = 18;
    private const double HeadLetterPoints = 11;
    private const double LabelPoints = 9.5;
    private const double RoomPoints = 8;
    private const double BeforeKeyPoints = 8;
    private const double MostHeightPoints = 420;
    private const double WidestPlanPoints = 320;
    private const int MostInRow = 4;

    /// <summary>The size of a picture for a given width between the margins of a page.</summary>
    /// <param name="request">What to draw.</param>
    /// <param name="widthPoints">Its width, points.</param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point.</param>
    public static PictureSize FittingSize(VerdictRequest request, double widthPoints, double pixelsPerPoint = 2.5)
    {
        ArgumentNullException.ThrowIfNull(request);
        double s = pixelsPerPoint, width = widthPoints * s;
        PlanBounds bounds = PlanBounds.Of(request.House);
        double plan = PlanWidth(request, bounds, width, s), scale = plan / bounds.WidthMetres;
        int rows = RowsOf(request);
        double height = (rows * ((scale * bounds.HeightMetres) + (HeadPoints * s))) + ((rows - 1) * BetweenPoints * s)
            + (BeforeKeyPoints * s) + Key(request, scale, width, s).HeightPixels;
        return new(
            PictureSize.NearestAllowed(width + (2 * Page.MarginPoints * s), s),
            PictureSize.NearestAllowed(height + (2 * Page.MarginPoints * s), s),
            s);
    }

    /// <summary>Draws it as vector graphics.</summary>
    public static VectorPicture Vector(VerdictRequest request, PictureSize size)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(size);
        double s = size.PixelsPerPoint;
        using var page = new Page(size, "", "", isVector: true);
        PlanBounds bounds = PlanBounds.Of(request.House);
        LabelBox body = page.Body;
        double plan = PlanWidth(request, bounds, body.Width, s), scale = plan / bounds.WidthMetres, high = scale * bounds.HeightMetres;
        int columns = ColumnsOf(request);
        for (int i = 0; i < request.House.Levels.Count; i++)
        {
            double left = body.Left + (i % columns * (plan + (BetweenPoints * s)));
            double top = body.Top + (i / columns * (high + ((HeadPoints + BetweenPoints) * s))) + (HeadPoints * s);
            PlanView view = PlanPlot.ViewIn(new(left, top, left + plan, top + high), bounds, s);
            var plot = new PlanPlot(view, request.Unit) { HasLeftFigures = false, HasBottomFigures = false };
            Fill(plot, request, i);
            plot.Draw(page.Canvas);
            using Lettering bold = new(HeadLetterPoints * s, isBold: true);
            bold.WriteMiddle(page.Canvas, bold.Fitted(request.House.Levels[i].Name, view.Frame.Width), view.Frame.Left, view.Frame.Top - (HeadPoints * s / 2), Palette.Ink);
        }

        KeyStrip key = Key(request, scale, body.Width, s);
        key.Draw(page.Canvas, body.Left, body.Bottom - key.HeightPixels);
        return page.ToVector();
    }

    private static int ColumnsOf(VerdictRequest request) => Math.Min(MostInRow, request.House.Levels.Count);

    private static int RowsOf(VerdictRequest request) => (request.House.Levels.Count + MostInRow - 1) / MostInRow;

    private static double PlanWidth(VerdictRequest request, PlanBounds bounds, double widthPixels, double s)
    {
        int columns = ColumnsOf(request);
        double widest = Math.Min(WidestPlanPoints * s, (widthPixels - ((columns - 1) * BetweenPoints * s)) / columns);
        return Math.Min(widest, MostHeightPoints / RowsOf(request) * s * bounds.WidthMetres / bounds.HeightMetres);
    }

    private static void Fill(PlanPlot plot, VerdictRequest request, int levelIndex)
    {
        PlanView view = plot.View;
        House house = request.House;
        Level level = house.Levels[levelIndex];
        Fixture[] fixtures = [.. house.Fixtures.Where(fixture => fixture.LevelIndex == levelIndex)];
        Polygon[] voids = [.. FloorVoids.Of(house, levelIndex)];
        LabelBox[] built = [.. BuiltBoxes.Of(view, level, fixtures)];
        var labels = new MarkLabels(view, [.. MarksOf(request, levelIndex)], built, LabelPoints, ground: BuiltBoxes.OfWalls(view, level));
        var names = new RoomNames(
            view,
            level.Rooms.Select(room => (room, (IReadOnlyList<string>)[room.Name])),
            [.. labels.Taken, .. built, .. BuiltBoxes.Of(view, voids)],
            RoomPoints);
        plot.Add(new RoomLayer(view, level));
        plot.Add(new VoidLayer(view, voids));
        plot.Add(new FixtureLayer(view, fixtures) { Ink = Palette.QuietInk });
        plot.Add(new WallLayer(view, level));
        plot.Add(new OpeningLayer(view, level));
        plot.Add(new RoomNameLayer(view, names));
        plot.Add(new MarkLayer(view, labels));
    }

    private static IEnumerable<PlanMark> MarksOf(VerdictRequest request, int levelIndex)
    {
        foreach (Spot spot in request.House.Spots.Where(spot => spot.LevelIndex == levelIndex))
        {
            bool isChosen = spot.Name == request.Chosen.Name;
            yield return new(isChosen ? MarkKind.SpotHere : MarkKind.SpotElsewhere, spot.Plan, isChosen ? spot.Name : "", "", null);
        }

        foreach (VerdictSeat seat in request.Seats.Where(seat => seat.Seat.LevelIndex == levelIndex))
        {
            yield return new(
                seat.Passes ? MarkKind.SeatPasses : MarkKind.SeatBelow, seat.Seat.Plan, FormattableString.Invariant($"{seat.Number}"), "", seat.Seat.FacingDegrees)
            {
                IsNumbered = true,
            };
        }
    }

    private static KeyStrip Key(VerdictRequest request, double pixelsPerMetre, double widthPixels, double s)
    {
        KeyEntry[] others = request.House.Spots.Count > 1 ? [MapKey.Mark(MarkKind.SpotElsewhere, "other spot", s)] : [];
        return new(
            [
                NorthArrow.For(s),
                ScaleBar.For(pixelsPerMetre, s, request.Unit),
                MapKey.Mark(MarkKind.SpotHere, "chosen spot", s),
                .. others,
                MapKey.Mark(MarkKind.SeatPasses, "seat passes", s),
                MapKey.Mark(MarkKind.SeatBelow, "seat does not pass", s),
            ],
            widthPixels,
            s);
    }
}

/// <summary>What the plan of a verdict shows.</summary>
/// <param name="House">The house.</param>
/// <param name="Chosen">The chosen spot.</param>
/// <param name="Seats">The seats.</param>
public sealed record VerdictRequest(House House, Spot Chosen, IReadOnlyList<VerdictSeat> Seats)
{
    /// <summary>The unit of the scale bar.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Metre;
}

/// <summary>A seat on the plan of a verdict.</summary>
/// <param name="Seat">The seat.</param>
/// <param name="Number">Its number in the table beside the plan.</param>
/// <param name="Passes">Whether it passes.</param>
public sealed record VerdictSeat(Seat Seat, int Number, bool Passes);
