using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Building;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Contours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Marks;

namespace LinkMargin.Plots.Maps;

/// <summary>One map in its frame, as it stands alone on a picture or among others on a sheet.</summary>
internal sealed class MapPanel(House house, MarginColours colours, double requiredDb, MapStyle style)
{
    private const int SmoothingPasses = 2;
    private const double RoomNamePoints = 9.5;

    /// <summary>Stacks the layers of one map on a plan, lowest first.</summary>
    public void Fill(PlanPlot plot, Field field, Field hatched, IReadOnlyList<SeatMark> seats)
    {
        PlanView view = plot.View;
        Level level = house.Levels[field.LevelIndex];
        Fixture[] fixtures = [.. house.Fixtures.Where(f => f.LevelIndex == field.LevelIndex)];
        LabelBox[] built = [.. BuiltBoxes.Of(view, level, fixtures)];
        var labels = new MarkLabels(view, [.. Marks(field, seats)], built, style.LabelPoints);
        IEnumerable<Room> named = style.HasRoomNames ? level.Rooms : [];
        IReadOnlyList<Polygon> voids = FloorVoids.Of(house, field.LevelIndex);
        var names = new RoomNames(
            view,
            named.Select(r => (r, (IReadOnlyList<string>)[r.Name])),
            [.. labels.Taken, .. built, .. BuiltBoxes.Of(view, voids)],
            RoomNamePoints);

        var surface = new FieldSurface(field, level.Rooms, SmoothingPasses);
        plot.Add(new FieldLayer(
            view, level, surface, hatched == field ? surface : new FieldSurface(hatched, level.Rooms, SmoothingPasses), colours, requiredDb));
        plot.Add(new ContourLayer(view, level, surface, colours, requiredDb, [.. labels.Taken, .. names.Taken, .. built])
        {
            FigurePoints = style.FigurePoints,
        });
        plot.Add(new VoidLayer(view, voids));
        plot.Add(new FixtureLayer(view, fixtures));
        plot.Add(new WallLayer(view, level));
        plot.Add(new OpeningLayer(view, level));
        plot.Add(new RoomNameLayer(view, names));
        plot.Add(new MarkLayer(view, labels));
    }

    private IEnumerable<PlanMark> Marks(Field field, IReadOnlyList<SeatMark> seats)
    {
        Spot spot = field.Spot;
        bool isHere = spot.LevelIndex == field.LevelIndex;
        string name = isHere ? spot.Name : $"{spot.Name} (on level {house.Levels[spot.LevelIndex].Name})";
        yield return new(
            isHere ? MarkKind.SpotHere : MarkKind.SpotElsewhere, spot.Plan, style.HasSpotLabel ? name : "", "", null);
        foreach (SeatMark mark in seats)
        {
            MarkKind kind = mark.Passes ? MarkKind.SeatPasses : MarkKind.SeatBelow;
            yield return new(kind, mark.Seat.Plan, mark.Seat.Name, SeatFigure.Of(mark, requiredDb), mark.Seat.FacingDegrees);
        }
    }
}

/// <summary>How much a map says, and how large.</summary>
/// <param name="LabelPoints">Size of seat and spot labels, points.</param>
/// <param name="FigurePoints">Size of figures on lines of equal margin, points.</param>
/// <param name="HasSpotLabel">Whether the spot's name stands at its mark.</param>
/// <param name="HasRoomNames">Whether rooms are named.</param>
internal sealed record MapStyle(double LabelPoints, double FigurePoints, bool HasSpotLabel, bool HasRoomNames)
{
    /// <summary>A map that stands alone.</summary>
    public static MapStyle Single { get; } = new(10, 8.5, HasSpotLabel: true, HasRoomNames: true);

    /// <summary>A map among others, read small; the head of its column names the spot.</summary>
    public static MapStyle OnSheet { get; } = new(11.5, 9.5, HasSpotLabel: false, HasRoomNames: false);
}

/// <summary>What a map writes behind a seat's name.</summary>
internal static class SeatFigure
{
    /// <summary>
    /// The margin; and what the seat asks for, where its answer would seem to contradict the hatch, which tells of the
    /// map's own required margin.
    /// </summary>
    public static string Of(SeatMark mark, double requiredDb)
    {
        bool agreesWithHatch = mark.Passes == ((mark.MarginAtConfidenceDb ?? mark.MarginDb) >= requiredDb);
        string needs = agreesWithHatch ? "" : $" (needs {MarginText.AsWritten(mark.Seat.RequiredDb)})";
        return MarginText.WithUnit(mark.MarginDb, mark.Seat.RequiredDb) + needs;
    }
}
