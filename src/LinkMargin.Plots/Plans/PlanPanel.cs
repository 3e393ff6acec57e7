using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Building;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Marks;
using LinkMargin.Plots.Runs;

namespace LinkMargin.Plots.Plans;

/// <summary>One level's plan as written, without any results, to check a house file by.</summary>
internal sealed class PlanPanel(House house, MaterialPatterns patterns, LengthUnit unit, IReadOnlyList<MeasurementMark> measurements)
{
    private const double LabelPoints = 10;
    private const double RoomPoints = 10;

    /// <summary>Cable runs to draw.</summary>
    public IReadOnlyList<DrawnRun> Runs { get; init; } = [];

    /// <summary>Stacks the layers of one level on a plan, lowest first.</summary>
    /// <param name="plot">The plan.</param>
    /// <param name="levelIndex">The level.</param>
    /// <param name="key">Takes the names without a free place.</param>
    public void Fill(PlanPlot plot, int levelIndex, NumberedKey key)
    {
        PlanView view = plot.View;
        Level level = house.Levels[levelIndex];
        LevelLabels labels = LabelsOf(view, levelIndex, key);
        plot.Add(new RoomLayer(view, level));
        plot.Add(new JoistLayer(view, level));
        plot.Add(new VoidLayer(view, [.. VoidsOf(levelIndex)]));
        plot.Add(new FixtureLayer(view, [.. FixturesOf(levelIndex)]));
        plot.Add(new CutWallLayer(view, level, patterns));
        plot.Add(new OpeningLayer(view, level));
        plot.Add(new RunLayer(view, house, Runs, levelIndex));
        plot.Add(new RoomNameLayer(view, labels.Rooms));
        plot.Add(new FixtureNameLayer(view, labels.Fixtures));
        plot.Add(new MarkLayer(view, labels.Marks));
    }

    /// <summary>The places of the names on one level; all of them avoid walls and marks.</summary>
    public LevelLabels LabelsOf(PlanView view, int levelIndex, NumberedKey key)
    {
        Level level = house.Levels[levelIndex];
        Fixture[] fixtures = [.. FixturesOf(levelIndex)];
        LabelBox[] built = [.. BuiltBoxes.Of(view, level, fixtures)], walls = [.. BuiltBoxes.OfWalls(view, level), .. RunLayer.Ground(view, house, Runs, levelIndex)];
        var marks = new MarkLabels(view, [.. Marks(levelIndex)], built, LabelPoints, ground: walls, key: key);
        LabelBox[] marked = [.. marks.Taken];
        var rooms = new RoomNames(
            view,
            level.Rooms.Select(r => (r, WordsOf(r))),
            [.. marked, .. built, .. walls, .. BuiltBoxes.Of(view, VoidsOf(levelIndex))],
            RoomPoints,
            [.. fixtures.SelectMany(fixture => BuiltBoxes.Of(view, [new Polygon(fixture.Corners())]))]);
        return new(marks, rooms, new FixtureNames(view, fixtures, [.. marked, .. rooms.Taken], built, walls, key));
    }

    private IEnumerable<Fixture> FixturesOf(int levelIndex) => house.Fixtures.Where(f => f.LevelIndex == levelIndex);

    private IEnumerable<Polygon> VoidsOf(int levelIndex) =>
        FloorVoids.Of(house, levelIndex).Concat(house.Levels[levelIndex].Above?.Voids ?? []);

    private IReadOnlyList<string> WordsOf(Room room)
    {
        double area = room.Outline.AreaSquareMetres / Math.Pow(LengthTicks.MetresPer(unit), 2);
        string figure = LengthTicks.Figure(unit == LengthUnit.Foot ? Math.Round(area) : Math.Round(area, 1));
        return [room.Name, $"{figure} {LengthTicks.ShortNameOf(unit)}²"];
    }

    // A mark without a name has no label, and so no height.
    private string HeightOf(string name, double metres) => name.Length > 0 ? LengthTicks.WithUnit(metres, unit) : "";

    private IEnumerable<PlanMark> Marks(int levelIndex)
    {
        foreach (Spot spot in house.Spots.Where(s => s.LevelIndex == levelIndex))
        {
            yield return new(MarkKind.SpotHere, spot.Plan, spot.Name, HeightOf(spot.Name, spot.HeightMetres), null) { IsRemark = true };
        }

        if (measurements.Count > 0)
        {
            foreach (MeasurementMark measurement in measurements.Where(r => r.LevelIndex == levelIndex))
            {
                yield return new(MarkKind.Measurement, measurement.Plan, measurement.Text, "", null);
            }

            yield break;
        }

        foreach (Seat seat in house.Seats.Where(s => s.LevelIndex == levelIndex))
        {
            yield return new(MarkKind.SeatPlain, seat.Plan, seat.Name, HeightOf(seat.Name, seat.HandsMetres), seat.FacingDegrees) { IsRemark = true };
        }
    }
}

/// <summary>The names on one level's plan with their places.</summary>
/// <param name="Marks">Of spots and seats.</param>
/// <param name="Rooms">Of rooms.</param>
/// <param name="Fixtures">Of fixtures.</param>
internal sealed record LevelLabels(MarkLabels Marks, RoomNames Rooms, FixtureNames Fixtures);
