using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Plans;
using LinkMargin.Plots.Surfaces;

namespace LinkMargin.Plots.Maps;

/// <summary>One map in its frame, as it stands alone on a picture or among others on a sheet.</summary>
internal static class MapPanel
{
    private const int Evenings = 2;
    private const double LeastSlantMetres = 1;

    /// <summary>Stacks the layers of one map on a plan, lowest first.</summary>
    public static void Fill(PlanPlot plot, House house, Field field, IReadOnlyList<SeatMark> seats, double requiredDb, MarginColours colours, double labelPoints)
    {
        PlanView view = plot.View;
        Level level = house.Levels[field.LevelIndex];
        Fixture[] fixtures = [.. house.Fixtures.Where(f => f.LevelIndex == field.LevelIndex)];
        LabelBox[] built = [.. Built(view, level, fixtures)];
        var labels = new MarkLabels(view, [.. Marks(house, field, seats)], built, labelPoints);
        var surface = new FieldSurface(field, level.Rooms, Evenings);
        plot.Add(new FieldLayer(view, level, surface, colours, requiredDb));
        plot.Add(new ContourLayer(view, level, surface, colours, requiredDb, [.. labels.Taken, .. built]));
        plot.Add(new VoidLayer(view, FloorVoids(house, field.LevelIndex)));
        plot.Add(new FixtureLayer(view, fixtures));
        plot.Add(new WallLayer(view, level));
        plot.Add(new OpeningLayer(view, level));
        plot.Add(new MarkLayer(view, labels));
    }

    private static IEnumerable<PlanMark> Marks(House house, Field field, IReadOnlyList<SeatMark> seats)
    {
        Spot spot = field.Spot;
        bool isHere = spot.LevelIndex == field.LevelIndex;
        string where = isHere ? spot.Name : $"{spot.Name} (on level {house.Levels[spot.LevelIndex].Name})";
        yield return new(isHere ? MarkKind.SpotHere : MarkKind.SpotElsewhere, spot.Plan, where, "", null);
        foreach (SeatMark mark in seats)
        {
            MarkKind kind = mark.Meets ? MarkKind.SeatMeets : MarkKind.SeatBelow;
            yield return new(kind, mark.Seat.Plan, mark.Seat.Name, MarginText.WithUnit(mark.MarginDb), mark.Seat.FacingDegrees);
        }
    }

    private static IReadOnlyList<Polygon> FloorVoids(House house, int levelIndex) =>
        levelIndex > 0 ? house.Levels[levelIndex - 1].Above?.Voids ?? [] : [];

    // The upright boxes of walls with their openings, open doors, and fixtures. A long slanted wall would claim far too much.
    private static IEnumerable<LabelBox> Built(PlanView view, Level level, IEnumerable<Fixture> fixtures)
    {
        var outlines = level.Walls
            .Select(w => WallShape.Along(w, 0, w.LengthMetres, -WallShape.ThicknessOf(w.Material) / 2, WallShape.ThicknessOf(w.Material) / 2))
            .Concat(level.Walls.SelectMany(w => w.Openings.Where(o => o.Kind == OpeningKind.Door && o.IsOpen).Select(o => LeafOf(level, w, o))))
            .Concat(fixtures.Select(FixtureShape.CornersOf));
        foreach (IReadOnlyList<Point2> corners in outlines)
        {
            double left = corners.Min(c => c.X), right = corners.Max(c => c.X);
            double bottom = corners.Min(c => c.Y), top = corners.Max(c => c.Y);
            if (Math.Min(right - left, top - bottom) < LeastSlantMetres)
            {
                yield return new(view.PixelX(left), view.PixelY(top), view.PixelX(right), view.PixelY(bottom));
            }
        }
    }

    private static IReadOnlyList<Point2> LeafOf(Level level, Wall wall, Opening door)
    {
        DoorSwing swing = DoorSwing.Of(level, wall, door);
        return [swing.Hinge, swing.Tip];
    }
}
