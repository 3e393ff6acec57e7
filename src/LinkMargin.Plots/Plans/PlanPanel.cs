using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;

namespace LinkMargin.Plots.Plans;

/// <summary>One level's plan as written, with nothing computed: what a person checks a house file by.</summary>
internal sealed class PlanPanel(House house, MaterialPatterns patterns, LengthUnit unit, IReadOnlyList<ReadingMark> readings)
{
    private const double LabelPoints = 10;
    private const double RoomPoints = 10;

    /// <summary>Stacks the layers of one level on a plan, lowest first.</summary>
    public void Fill(PlanPlot plot, int levelIndex)
    {
        PlanView view = plot.View;
        Level level = house.Levels[levelIndex];
        Fixture[] fixtures = [.. house.Fixtures.Where(f => f.LevelIndex == levelIndex)];
        Polygon[] voids = [.. FloorVoids.Of(house, levelIndex), .. level.Above?.Voids ?? []];
        LabelBox[] built = [.. BuiltBoxes.Of(view, level, fixtures)];
        var labels = new MarkLabels(view, [.. Marks(levelIndex)], built, LabelPoints);
        LabelBox[] marked = [.. labels.Taken];
        var rooms = new RoomNames(
            view, level.Rooms.Select(r => (r, WordsOf(r))), [.. marked, .. built, .. BuiltBoxes.Of(view, voids)], RoomPoints);
        var fixtureNames = new FixtureNames(view, fixtures, [.. marked, .. rooms.Taken], built);

        plot.Add(new RoomLayer(view, level));
        plot.Add(new JoistLayer(view, level));
        plot.Add(new VoidLayer(view, voids));
        plot.Add(new FixtureLayer(view, fixtures));
        plot.Add(new CutWallLayer(view, level, patterns));
        plot.Add(new OpeningLayer(view, level));
        plot.Add(new RoomNameLayer(view, rooms));
        plot.Add(new FixtureNameLayer(view, fixtureNames));
        plot.Add(new MarkLayer(view, labels));
    }

    private IReadOnlyList<string> WordsOf(Room room)
    {
        double area = room.Outline.AreaSquareMetres / Math.Pow(LengthTicks.MetresPer(unit), 2);
        string figure = LengthTicks.Figure(unit == LengthUnit.Feet ? Math.Round(area) : Math.Round(area, 1));
        return [room.Name, $"{figure} {LengthTicks.ShortNameOf(unit)}²"];
    }

    private IEnumerable<PlanMark> Marks(int levelIndex)
    {
        foreach (Spot spot in house.Spots.Where(s => s.LevelIndex == levelIndex))
        {
            yield return new(MarkKind.SpotHere, spot.Plan, spot.Name, "", null);
        }

        if (readings.Count > 0)
        {
            foreach (ReadingMark reading in readings.Where(r => r.LevelIndex == levelIndex))
            {
                yield return new(MarkKind.Reading, reading.Plan, reading.Text, "", null);
            }

            yield break;
        }

        foreach (Seat seat in house.Seats.Where(s => s.LevelIndex == levelIndex))
        {
            yield return new(MarkKind.SeatPlain, seat.Plan, seat.Name, "", seat.FacingDegrees);
        }
    }
}
