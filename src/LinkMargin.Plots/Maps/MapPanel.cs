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
    private const double RoomNamePoints = 9.5;

    /// <summary>Outlines of zones to show on a level.</summary>
    public ILookup<int, Polygon> Zones { get; init; } = Array.Empty<Polygon>().ToLookup(_ => 0);

    /// <summary>Stacks the layers of one map on a plan, lowest first.</summary>
    /// <param name="plot">The plan.</param>
    /// <param name="field">What is coloured.</param>
    /// <param name="hatched">The field that is hatched where it is below the required margin.</param>
    /// <param name="marks">Spots and seats.</param>
    public void Fill(PlanPlot plot, Field field, Field hatched, IEnumerable<PlanMark> marks)
    {
        PlanView view = plot.View;
        Level level = house.Levels[field.LevelIndex];
        Fixture[] fixtures = [.. house.Fixtures.Where(f => f.LevelIndex == field.LevelIndex)];
        LabelBox[] built = [.. BuiltBoxes.Of(view, level, fixtures)];
        var labels = new MarkLabels(view, [.. marks], built, style.LabelPoints);
        IEnumerable<Room> named = style.HasRoomNames ? level.Rooms : [];
        IReadOnlyList<Polygon> voids = FloorVoids.Of(house, field.LevelIndex);
        var names = new RoomNames(
            view,
            named.Select(r => (r, (IReadOnlyList<string>)[r.Name])),
            [.. labels.Taken, .. built, .. BuiltBoxes.Of(view, voids)],
            RoomNamePoints);

        var surface = new FieldSurface(field, level.Rooms, style.SmoothingPasses);
        FieldSurface below = hatched == field ? surface : new FieldSurface(hatched, level.Rooms, style.SmoothingPasses);
        plot.Add(new FieldLayer(view, level, surface, below, colours, requiredDb));
        plot.Add(new ContourLayer(view, level, surface, colours, requiredDb, [.. labels.Taken, .. names.Taken, .. built])
        {
            FigurePoints = style.FigurePoints,
        });
        plot.Add(new VoidLayer(view, voids));
        plot.Add(new FixtureLayer(view, fixtures));
        plot.Add(new ZoneLayer(view, [.. Zones[field.LevelIndex]]));
        plot.Add(new WallLayer(view, level));
        plot.Add(new OpeningLayer(view, level));
        plot.Add(new RoomNameLayer(view, names));
        plot.Add(new MarkLayer(view, labels));
    }
}

/// <summary>How much a map says, and how large.</summary>
/// <param name="LabelPoints">Size of seat and spot labels, points.</param>
/// <param name="FigurePoints">Size of figures on contour lines, points.</param>
/// <param name="HasRoomNames">Whether rooms are named.</param>
/// <param name="SmoothingPasses">How often the field is smoothed before lines are drawn through it.</param>
internal sealed record MapStyle(double LabelPoints, double FigurePoints, bool HasRoomNames, int SmoothingPasses)
{
    /// <summary>A map of one spot that stands alone.</summary>
    public static MapStyle Single { get; } = new(10, 8.5, HasRoomNames: true, SmoothingPasses: 2);

    /// <summary>A map among others, read small.</summary>
    public static MapStyle OnSheet { get; } = new(11.5, 9.5, HasRoomNames: false, SmoothingPasses: 2);

    /// <summary>A map of the choice.</summary>
    public static MapStyle Choice { get; } = new(10, 8.5, HasRoomNames: true, SmoothingPasses: 1);
}
