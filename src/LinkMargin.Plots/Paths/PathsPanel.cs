using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Plots.Building;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Marks;

namespace LinkMargin.Plots.Paths;

/// <summary>One level of a house with the paths of a link. Anything that the paths do not cross is drawn in the background.</summary>
/// <param name="request">What to draw.</param>
/// <param name="paths">The paths that run on lines, strongest first.</param>
/// <param name="lettered">The names that stand in the key by a letter, from A.</param>
internal sealed class PathsPanel(PathsRequest request, IReadOnlyList<DrawnPath> paths, IReadOnlyList<string> lettered)
{
    private const double LabelPoints = 10;
    private const double RoomPoints = 9.5;

    private readonly House house = request.House;

    /// <summary>Stacks the layers of one level on a plan, lowest first.</summary>
    public void Fill(PlanPlot plot, int levelIndex)
    {
        PlanView view = plot.View;
        Level level = house.Levels[levelIndex];
        Fixture[] fixtures = [.. house.Fixtures.Where(f => f.LevelIndex == levelIndex)];
        Fixture[] met = [.. fixtures.Where(IsMet)];
        Polygon[] voids = [.. FloorVoids.Of(house, levelIndex), .. level.Above?.Voids ?? []];
        LabelBox[] built = [.. BuiltBoxes.Of(view, level, fixtures)];
        LabelBox[] lines = [.. paths.SelectMany(path => PathGround.Of(view, path, levelIndex))];
        LabelBox[] outside = [.. Outside(view.Frame)];
        PathEntry? diffuse = request.Paths.FirstOrDefault(entry => entry.Path.Path.Kind == PathKind.Diffuse);
        Room? dotted = diffuse is not null && levelIndex == request.Seat.LevelIndex
            ? level.Rooms.FirstOrDefault(room => room.Outline.Contains(request.Seat.Plan))
            : null;

        (PathNumbers numbers, MarkLabels labels) = LabelsOf(view, levelIndex, built, lines);
        if (diffuse is not null && levelIndex == request.Seat.LevelIndex)
        {
            numbers.Add(diffuse.Number, NumberOfField(view, dotted, [.. labels.Taken, .. numbers.Taken, .. lines, .. built, .. outside]));
        }

        LabelBox[] written = [.. labels.Taken, .. numbers.Taken];
        var rooms = new RoomNames(
            view,
            level.Rooms.Select(r => (r, (IReadOnlyList<string>)[r.Name])),
            [.. written, .. lines, .. built, .. BuiltBoxes.Of(view, voids), .. outside],
            RoomPoints);
        var fixtureNames = new FixtureNames(
            view, [.. met.Where(f => f.Seat is null)], [.. written, .. rooms.Taken], built, lines);

        plot.Add(new RoomLayer(view, level));
        if (dotted is not null)
        {
            plot.Add(new DiffuseLayer(view, dotted));
        }

        plot.Add(new VoidLayer(view, voids));
        plot.Add(new FixtureLayer(view, [.. fixtures.Except(met)]) { Ink = Palette.QuietInk });
        plot.Add(new WallLayer(view, level) { Ink = Palette.QuietInk });
        plot.Add(new OpeningLayer(view, level) { Ink = Palette.QuietInk });
        plot.Add(new FixtureLayer(view, met));
        plot.Add(new RoomNameLayer(view, rooms));
        plot.Add(new PathLayer(view, paths, levelIndex));
        plot.Add(new FixtureNameLayer(view, fixtureNames));
        plot.Add(new PathNumberLayer(view, numbers));
        plot.Add(new MarkLayer(view, labels));
    }

    /// <summary>The names on a level that find no place clear of walls.</summary>
    public IEnumerable<string> CrowdedOn(PlanView view, int levelIndex)
    {
        Level level = house.Levels[levelIndex];
        LabelBox[] built = [.. BuiltBoxes.Of(view, level, house.Fixtures.Where(f => f.LevelIndex == levelIndex))];
        LabelBox[] lines = [.. paths.SelectMany(path => PathGround.Of(view, path, levelIndex))];
        return LabelsOf(view, levelIndex, built, lines).Marks.CrowdedBy([.. BuiltBoxes.OfWalls(view, level)]);
    }

    private (PathNumbers Numbers, MarkLabels Marks) LabelsOf(PlanView view, int levelIndex, LabelBox[] built, LabelBox[] lines)
    {
        PlanMark[] marks = [.. Marks(levelIndex).Where(mark => IsShown(view, mark.Place)).Select(Lettered)];
        var numbers = new PathNumbers(view, levelIndex, paths, [.. marks.Select(mark => MarkLabels.BoxOf(view, mark))], built);
        return (numbers, new MarkLabels(view, marks, built, LabelPoints, numbers.Taken, [.. lines, .. BuiltBoxes.OfWalls(view, house.Levels[levelIndex])]));
    }

    // Numbers are those of the paths, so names that stand in the key have letters.
    private PlanMark Lettered(PlanMark mark) => lettered.ToList().IndexOf(mark.Name) is >= 0 and var i
        ? mark with { Name = PathsKey.Letter(i), IsNumbered = true }
        : mark;

    private static bool IsShown(PlanView view, Point2 place) =>
        LabelBox.Around(view.PixelX(place.X), view.PixelY(place.Y), 0, 0) is var at && view.Frame.Contains(at);

    // Ground outside the frame, where no text would be visible.
    private static IEnumerable<LabelBox> Outside(LabelBox frame)
    {
        const double Far = 1e6;
        yield return new(-Far, -Far, frame.Left, Far);
        yield return new(frame.Right, -Far, Far, Far);
        yield return new(-Far, -Far, Far, frame.Top);
        yield return new(-Far, frame.Bottom, Far, Far);
    }

    // Names are shown for fixtures that a path crosses, and for the one with the console in it.
    private bool IsMet(Fixture fixture) =>
        request.Paths.Any(entry =>
            entry.Path.Path.Crossings.Any(c => c.Kind is ObstacleKind.Fixture or ObstacleKind.Player
                && c.Name == fixture.Name && c.LevelIndex == fixture.LevelIndex)
            || entry.Path.Turns.Any(t => t.Kind == TurnKind.Fixture && t.Name == fixture.Name))
        || (fixture.LevelIndex == request.Spot.LevelIndex && new Polygon(fixture.Corners()).Contains(request.Spot.Plan));

    private IEnumerable<PlanMark> Marks(int levelIndex)
    {
        Spot spot = request.Spot;
        Seat seat = request.Seat;
        bool isHere = spot.LevelIndex == levelIndex;
        string name = isHere ? spot.Name : $"{spot.Name} (on {house.Levels[spot.LevelIndex].Name})";
        yield return new(isHere ? MarkKind.SpotHere : MarkKind.SpotElsewhere, spot.Plan, name, "", null);
        if (seat.LevelIndex == levelIndex)
        {
            yield return new(MarkKind.SeatPasses, seat.Plan, seat.Name, "", seat.FacingDegrees);
        }

        foreach (Seat other in request.Occupied.Where(other => other.LevelIndex == levelIndex))
        {
            yield return new(MarkKind.SeatPlain, other.Plan, other.Name, "", other.FacingDegrees);
        }
    }

    // In the room of the field, where there is most free ground; beside the seat if there is no room.
    private LabelBox NumberOfField(PlanView view, Room? room, IReadOnlyList<LabelBox> taken)
    {
        LabelBox beside = NumberBadge.BoxAt(
            view.PixelX(request.Seat.Plan.X), view.PixelY(request.Seat.Plan.Y) - view.Points(24), view.PixelsPerPoint);
        if (room is null)
        {
            return beside;
        }

        double step = view.Points(6), mostFree = 0;
        Point2 least = room.Outline.Least, greatest = room.Outline.Greatest;
        LabelBox best = beside;
        for (double y = view.PixelY(greatest.Y); y < view.PixelY(least.Y); y += step)
        {
            for (double x = view.PixelX(least.X); x < view.PixelX(greatest.X); x += step)
            {
                double free = Math.Min(
                    view.Metres(room.Outline.DepthOf(new(view.MetresX(x), view.MetresY(y)))),
                    taken.Min(box => box.DistanceTo(x, y)));
                if (free > mostFree)
                {
                    (best, mostFree) = (NumberBadge.BoxAt(x, y, view.PixelsPerPoint), free);
                }
            }
        }

        return best;
    }
}
