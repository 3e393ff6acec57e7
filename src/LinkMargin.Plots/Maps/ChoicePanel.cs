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

/// <summary>One level of a map of the choice: how well off the worst seat is, where a console may stand, and places found.</summary>
internal sealed class ChoicePanel(House house, MarginColours colours)
{
    private const int SmoothingPasses = 1;
    private const double LabelPoints = 10;
    private const double FigurePoints = 8.5;
    private const double RoomNamePoints = 9.5;
    private const double JustPassesDb = 0;

    /// <summary>Stacks the layers of one level on a plan, lowest first.</summary>
    public void Fill(PlanPlot plot, Field field, IReadOnlyList<ChoiceMark> places)
    {
        PlanView view = plot.View;
        Level level = house.Levels[field.LevelIndex];
        Fixture[] fixtures = [.. house.Fixtures.Where(f => f.LevelIndex == field.LevelIndex)];
        LabelBox[] built = [.. BuiltBoxes.Of(view, level, fixtures)];
        var labels = new MarkLabels(view, [.. Marks(field, places)], built, LabelPoints);
        IReadOnlyList<Polygon> voids = FloorVoids.Of(house, field.LevelIndex);
        var names = new RoomNames(
            view,
            level.Rooms.Select(r => (r, (IReadOnlyList<string>)[r.Name])),
            [.. labels.Taken, .. built, .. BuiltBoxes.Of(view, voids)],
            RoomNamePoints);
        var surface = new FieldSurface(field, level.Rooms, SmoothingPasses);
        plot.Add(new FieldLayer(view, level, surface, surface, colours, JustPassesDb));
        plot.Add(new ContourLayer(view, level, surface, colours, JustPassesDb, [.. labels.Taken, .. names.Taken, .. built])
        {
            FigurePoints = FigurePoints,
        });
        plot.Add(new VoidLayer(view, voids));
        plot.Add(new FixtureLayer(view, fixtures));
        plot.Add(new ZoneLayer(view, [.. house.Zones.Where(z => z.LevelIndex == field.LevelIndex).Select(z => z.Outline)]));
        plot.Add(new WallLayer(view, level));
        plot.Add(new OpeningLayer(view, level));
        plot.Add(new RoomNameLayer(view, names));
        plot.Add(new MarkLayer(view, labels));
    }

    private IEnumerable<PlanMark> Marks(Field field, IReadOnlyList<ChoiceMark> places)
    {
        foreach (ChoiceMark place in places)
        {
            MarkKind kind = place.IsNamed ? MarkKind.SpotElsewhere : MarkKind.SpotHere;
            yield return new(kind, place.Plan, place.Name, $"{MarginText.WithSign(place.Figure)} dB", null);
        }

        foreach (Seat seat in house.Seats.Where(s => s.LevelIndex == field.LevelIndex))
        {
            yield return new(MarkKind.SeatPlain, seat.Plan, seat.Name, "", seat.FacingDegrees);
        }
    }
}
