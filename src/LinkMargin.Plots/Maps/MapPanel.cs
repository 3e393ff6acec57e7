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

/// <summary>One map in its frame, alone on a picture or with others on a sheet.</summary>
internal sealed class MapPanel(House house, MarginColours colours, double requiredDb, MapStyle style)
{
    private const double RoomNamePoints = 9.5;

    /// <summary>Outlines of zones to show on a level.</summary>
    public ILookup<int, Polygon> Zones { get; init; } = Array.Empty<Polygon>().ToLookup(_ => 0);

    /// <summary>Stacks the layers of one map on a plan, lowest first.</summary>
    /// <param name="plot">The plan.</param>
    /// <param name="field">The field shown in colours.</param>
    /// <param name="hatched">The field that is hatched where it is below the required margin.</param>
    /// <param name="marks">Spots and seats.</param>
    /// <param name="alsoRequiredDb">Margins that only some of these seats require, dB; drawn bold and dashed.</param>
    public void Fill(PlanPlot plot, Field field, Field hatched, IReadOnlyList<PlanMark> marks, IReadOnlyList<double> alsoRequiredDb)
    {
        PlanView view = plot.View;
        Level level = house.Levels[field.LevelIndex];
        Fixture[] fixtures = FixturesOf(field.LevelIndex);
        LabelBox[] built = [.. BuiltBoxes.Of(view, level, fixtures)];
        MarkLabels labels = LabelsOf(view, field.LevelIndex, marks);
        IEnumerable<Room> named = style.HasRoomNames ? level.Rooms : [];
        IReadOnlyList<Polygon> voids = FloorVoids.Of(house, field.LevelIndex);
        var names = new RoomNames(
            view,
            named.Select(r => (r, (IReadOnlyList<string>)[r.Name])),
            [.. labels.Taken, .. built, .. BuiltBoxes.Of(view, voids)],
            RoomNamePoints);

        IReadOnlyList<Polygon> filled = FieldGround.FilledAt(fixtures, field.HandsMetres);
        var ground = new FieldGround(level, filled);
        FieldSurface surface = SurfaceOf(field);
        FieldSurface below = hatched == field ? surface : SurfaceOf(hatched);
        plot.Add(new FieldLayer(view, ground, surface, below, colours, requiredDb) { IsVector = plot.IsVector });
        plot.Add(new ContourLayer(view, ground, surface, colours, requiredDb, [.. labels.Taken, .. names.Taken, .. built])
        {
            FigurePoints = style.FigurePoints,
            AlsoRequiredDb = alsoRequiredDb,
        });
        plot.Add(new VoidLayer(view, voids));
        plot.Add(new FixtureLayer(view, fixtures));
        plot.Add(new ZoneLayer(view, [.. Zones[field.LevelIndex]]));
        plot.Add(new WallLayer(view, level));
        plot.Add(new OpeningLayer(view, level));
        plot.Add(new RoomNameLayer(view, names));
        plot.Add(new MarkLayer(view, labels));

        FieldSurface SurfaceOf(Field of) => ContourIslands.Smoothed(
            new FieldSurface(of, level.Rooms, style.SmoothingPasses, filled),
            level,
            [.. colours.Lines(), requiredDb, .. alsoRequiredDb],
            marks.Select(mark => mark.Place));
    }

    /// <summary>The places of the marks' labels: never over a wall if there is space elsewhere.</summary>
    public MarkLabels LabelsOf(PlanView view, int levelIndex, IReadOnlyList<PlanMark> marks)
    {
        Level level = house.Levels[levelIndex];
        return new(
            view, marks, BuiltBoxes.Of(view, level, FixturesOf(levelIndex)), style.LabelPoints, ground: BuiltBoxes.OfWalls(view, level));
    }

    private Fixture[] FixturesOf(int levelIndex) => [.. house.Fixtures.Where(f => f.LevelIndex == levelIndex)];
}

/// <summary>How detailed a map is, and its text sizes.</summary>
/// <param name="LabelPoints">Size of seat and spot labels, points.</param>
/// <param name="FigurePoints">Size of numbers on contour lines, points.</param>
/// <param name="HasRoomNames">Whether rooms are named.</param>
/// <param name="SmoothingPasses">How often the field is smoothed before its contour lines are drawn.</param>
internal sealed record MapStyle(double LabelPoints, double FigurePoints, bool HasRoomNames, int SmoothingPasses)
{
    /// <summary>The same with letters of another size, a share of these.</summary>
    public MapStyle Scaled(double share) => this with { LabelPoints = share * LabelPoints, FigurePoints = share * FigurePoints };

    /// <summary>A map of one spot, shown alone.</summary>
    public static MapStyle Single { get; } = new(10, 8.5, HasRoomNames: true, SmoothingPasses: 2);

    /// <summary>A map among others, at a small size.</summary>
    public static MapStyle OnSheet { get; } = new(11.5, 9.5, HasRoomNames: false, SmoothingPasses: 2);

    /// <summary>A map of the choice.</summary>
    public static MapStyle Choice { get; } = new(10, 8.5, HasRoomNames: true, SmoothingPasses: 1);
}
