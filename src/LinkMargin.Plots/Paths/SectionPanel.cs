using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths;
using LinkMargin.Plots.Building;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Marks;
using SkiaSharp;

namespace LinkMargin.Plots.Paths;

/// <summary>A vertical section through two places with paths and cable runs projected onto it, and the names of levels and floors beside it.</summary>
internal sealed class SectionPanel(SectionRequest request)
{
    /// <summary>Space for the text to the right of the frame, points.</summary>
    public const double BesidePoints = 150;

    private const double LabelPoints = 10;
    private const double RoomPoints = 9.5;
    private const double BesideLetterPoints = 9;

    /// <summary>What the cut meets.</summary>
    public Section Section { get; } = new(request);

    /// <summary>Draws it with its axes.</summary>
    /// <param name="canvas">Where to draw.</param>
    /// <param name="view">Its view: along the cut to the right, heights upwards.</param>
    /// <param name="paths">The paths that consist of lines, on the cut, strongest first.</param>
    public void Draw(SKCanvas canvas, PlanView view, IReadOnlyList<DrawnPath> paths)
    {
        SectionLabels labels = LabelsOf(view, paths);
        var plot = new PlanPlot(view, request.Unit);
        plot.Add(new SectionLayer(view, Section));
        if (request.Paths.Any(entry => entry.Path.Path.Kind == PathKind.Diffuse) && SeatRoom() is Room dotted)
        {
            plot.Add(new DiffuseLayer(view, dotted));
        }

        plot.Add(new RoomNameLayer(view, labels.Rooms));
        plot.Add(new RunSectionLayer(view, Section.Cut, request.Runs, request.RunColour));
        plot.Add(new PathLayer(view, paths, levelIndex: 0));
        plot.Add(new FixtureNameLayer(view, labels.Fixtures));
        plot.Add(new RunSectionLayer.Numbers(view, Section.Cut, request.Runs, request.RunColour));
        plot.Add(new PathNumberLayer(view, labels.Numbers));
        plot.Add(new MarkLayer(view, labels.Marks));
        plot.Draw(canvas);
        DrawBeside(canvas, view);
    }

    /// <summary>Places of numbers and names: none over another, over a mark or, if there is space elsewhere, over a path.</summary>
    public SectionLabels LabelsOf(PlanView view, IReadOnlyList<DrawnPath> paths)
    {
        PlanMark[] marks =
        [
            MarkOf(request.From, Section.From),
            MarkOf(request.To, Section.To),
        ];
        LabelBox[] structure = [.. Structure(view)];
        LabelBox[] built = [.. structure, .. BuiltBoxes.Of(view, Section.Fixtures.Select(f => Standing(f.From, f.BottomMetres, f.To, f.TopMetres)))];
        LabelBox[] lines = [.. paths.SelectMany(path => PathGround.Of(view, path, levelIndex: 0)), .. RunSectionLayer.Ground(view, Section.Cut, request.Runs)];
        var numbers = new PathNumbers(view, 0, paths, [.. marks.Select(mark => MarkLabels.BoxOf(view, mark)), .. RunSectionLayer.NumberBoxes(view, Section.Cut, request.Runs)], built);
        var labels = new MarkLabels(view, marks, built, LabelPoints, numbers.Taken, [.. lines, .. structure]);
        LabelBox[] written = [.. labels.Taken, .. numbers.Taken];
        var rooms = new RoomNames(view, Section.Levels.SelectMany(RoomsOf), [.. written, .. lines, .. built], RoomPoints);
        Fixture[] fixtures = [.. Section.Fixtures.Where(f => f.To > view.Least.X && f.From < view.MetresX(view.Frame.Right)).Select(Standing)];
        return new(labels, rooms, new FixtureNames(view, fixtures, [.. written, .. rooms.Taken], built, [.. lines, .. structure]), numbers);
    }

    // The part of the seat's room along the cut that contains the seat.
    private Room? SeatRoom()
    {
        Level level = request.House.Levels[request.To.LevelIndex];
        Room? room = level.Rooms.FirstOrDefault(r => r.Outline.Contains(request.To.Plan));
        (double From, double To)[] stretches = room is null ? [] : [.. Section.Cut.Inside(room.Outline).Where(s => s.From <= Section.To.X && s.To >= Section.To.X)];
        return stretches is [var one, ..] ? new Room("", Standing(one.From, level.ElevationMetres, one.To, level.CeilingMetres)) : null;
    }

    private PlanMark MarkOf(SectionEnd end, Point2 seen) =>
        new(end.Kind, seen, end.Name, end.Name.Length > 0 ? LengthTicks.WithUnit(end.HeightMetres, request.Unit) : "", null) { IsRemark = true };

    // From the side, a fixture is a box as wide as its cut and as high as the fixture.
    private static Fixture Standing(FixtureInCut cut) => cut.Fixture with
    {
        Centre = new((cut.From + cut.To) / 2, (cut.BottomMetres + cut.TopMetres) / 2),
        SizeX = Math.Max(1e-3, cut.To - cut.From),
        SizeY = Math.Max(1e-3, cut.TopMetres - cut.BottomMetres),
        TurnDegrees = 0,
    };

    private IEnumerable<(Room Room, IReadOnlyList<string> Lines)> RoomsOf(Level level) =>
        from room in level.Rooms
        from stretch in Section.Cut.Inside(room.Outline)
        select (new Room(room.Name, Standing(stretch.From, level.ElevationMetres, stretch.To, level.CeilingMetres)), (IReadOnlyList<string>)[room.Name]);

    private static Polygon Standing(double from, double bottom, double to, double top) =>
        new([new(from, bottom), new(to, bottom), new(to, top), new(from, top)]);

    // Ground under walls and floors; the lowest floor and the highest ceiling as strips.
    private IEnumerable<LabelBox> Structure(PlanView view)
    {
        double strip = 2 * view.PixelsPerPoint / view.PixelsPerMetre, right = view.MetresX(view.Frame.Right);
        return BuiltBoxes.Of(
            view,
            [
                .. Section.Levels.SelectMany(level => Section.Cut.Walls(level).Select(wall =>
                    Standing(wall.From, level.ElevationMetres + wall.Wall.BaseMetres, wall.To, level.ElevationMetres + wall.Wall.TopMetres))),
                .. Section.Floors.SelectMany(floor => floor.Stretches.Select(s => Standing(s.From, floor.BottomMetres, s.To, floor.TopMetres))),
                .. Section.Levels.SelectMany(level => new[] { level.ElevationMetres, level.CeilingMetres })
                    .Select(height => Standing(view.Least.X, height - strip, right, height + strip)),
            ]);
    }

    // Each level and floor is named at its own height, to the right of the frame.
    private void DrawBeside(SKCanvas canvas, PlanView view)
    {
        using Lettering bold = new(view.Points(BesideLetterPoints), isBold: true), plain = new(view.Points(BesideLetterPoints), isBold: false);
        double left = view.Frame.Right + view.Points(8), width = view.Points(BesidePoints - 8), line = plain.LineHeight;
        foreach (Level level in Section.Levels)
        {
            double y = view.PixelY((level.ElevationMetres + level.CeilingMetres) / 2);
            bold.WriteMiddle(canvas, bold.Fitted(level.Name, width), left, y - (line / 2), Palette.Ink);
            plain.WriteMiddle(canvas, plain.Fitted($"clear height {LengthTicks.WithUnit(level.HeightMetres, request.Unit)}", width), left, y + (line / 2), Palette.SoftInk);
        }

        foreach (FloorInCut floor in Section.Floors)
        {
            double y = view.PixelY((floor.BottomMetres + floor.TopMetres) / 2);
            string joists = floor.Floor.Joists is JoistLayout layout
                ? $", joists {LengthTicks.WithUnit(layout.SpacingMetres, request.Unit)} apart{(IsAlong(layout) ? ", along the cut" : "")}"
                : "";
            string thick = LengthTicks.WithUnit(floor.TopMetres - floor.BottomMetres, request.Unit);
            plain.WriteMiddle(canvas, plain.Fitted(floor.Floor.BuildUp.Name, width), left, y - (line / 2), Palette.Ink);
            plain.WriteMiddle(canvas, plain.Fitted($"{thick}{joists}", width), left, y + (line / 2), Palette.SoftInk);
        }
    }

    private bool IsAlong(JoistLayout layout) => !Section.Cut.Joists(layout, 0.05, 0, 2 * layout.SpacingMetres).Any();
}

/// <summary>The text on a section, with its places.</summary>
/// <param name="Marks">Spot and seat with their heights.</param>
/// <param name="Rooms">Names of rooms.</param>
/// <param name="Fixtures">Names of fixtures.</param>
/// <param name="Numbers">Numbers of paths.</param>
internal sealed record SectionLabels(MarkLabels Marks, RoomNames Rooms, FixtureNames Fixtures, PathNumbers Numbers);
