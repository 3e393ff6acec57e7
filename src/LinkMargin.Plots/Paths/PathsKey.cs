using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Marks;
using LinkMargin.Plots.Runs;
using SkiaSharp;

namespace LinkMargin.Plots.Paths;

/// <summary>The key of a picture of paths; only symbols that occur.</summary>
internal static class PathsKey
{
    private const double LetterPoints = 10;
    private const int Letters = 26;

    /// <summary>The letter of a name that stands in the key, from A.</summary>
    public static string Letter(int index) => index < Letters ? $"{(char)('A' + index)}" : FormattableString.Invariant($"{(char)('A' + (index % Letters))}{index / Letters}");

    public static IReadOnlyList<KeyEntry> Entries(
        PathsRequest request, IReadOnlyList<int> levels, IReadOnlyList<string> lettered, double pixelsPerMetre, double pixelsPerPoint)
    {
        PathBudget[] paths = [.. request.Paths.Select(entry => entry.Path)];
        var entries = new List<KeyEntry>
        {
            NorthArrow.For(pixelsPerPoint),
            ScaleBar.For(pixelsPerMetre, pixelsPerPoint, request.Unit),
            Mark(MarkKind.SpotHere, "spot", pixelsPerPoint),
        };
        if (levels.Any(level => level != request.Spot.LevelIndex))
        {
            entries.Add(Mark(MarkKind.SpotElsewhere, "spot on another level", pixelsPerPoint));
        }

        entries.Add(Mark(MarkKind.SeatPasses, "seat", pixelsPerPoint));
        if (request.Occupied.Any(seat => levels.Contains(seat.LevelIndex)))
        {
            entries.Add(Mark(MarkKind.SeatPlain, "seat with somebody on it", pixelsPerPoint));
        }

        if (paths.Any(path => path.Path.Crossings.Any(c => c.Kind is not (ObstacleKind.FloorLayer or ObstacleKind.Joists))))
        {
            entries.Add(new(16, "obstacle on the path", (canvas, box) => DrawTick(canvas, box, pixelsPerPoint)));
        }

        AddTriangle(TurnKind.Floor, "reflected by a floor");
        AddTriangle(TurnKind.Ceiling, "reflected by a ceiling");
        if (levels.Count > 1)
        {
            entries.Add(new(16, "continues on another level (drawn faint)", (canvas, box) => DrawRing(canvas, box, pixelsPerPoint)));
        }

        entries.AddRange(request.Runs.Count > 0 ? RunSigns.Entries(SectionRequest.Of(request).RunColour, pixelsPerPoint) : []);
        entries.Add(new(0, "the wider the line, the larger its share", (_, _) => { }));
        entries.Add(new(0, "section: heights from the lowest floor, distances from the spot; labels give heights above the floor", (_, _) => { }));
        entries.AddRange(lettered.Select((name, i) => new KeyEntry(LetterPoints, name, (canvas, box) =>
        {
            using var letter = new Lettering(LetterPoints * pixelsPerPoint, isBold: true);
            letter.WriteMiddle(canvas, Letter(i), box.Right, box.CentreY, Palette.Ink, SKTextAlign.Right);
        })));
        return entries;

        void AddTriangle(TurnKind kind, string text)
        {
            if (paths.Any(path => path.Turns.Any(turn => turn.Kind == kind)))
            {
                entries.Add(new(10, text, (canvas, box) =>
                    PathSigns.DrawTriangle(canvas, Middle(box), kind == TurnKind.Ceiling, pixelsPerPoint)));
            }
        }
    }

    private static SKPoint Middle(LabelBox box) => new((float)box.CentreX, (float)box.CentreY);

    private static KeyEntry Mark(MarkKind kind, string text, double pixelsPerPoint) =>
        new(11, text, (canvas, box) => MarkShape.Draw(canvas, kind, Middle(box), null, pixelsPerPoint));

    private static void DrawTick(SKCanvas canvas, LabelBox box, double pixelsPerPoint)
    {
        DrawLine(canvas, box, pixelsPerPoint);
        PathSigns.DrawTick(canvas, Middle(box), new Point2(1, 0), 4.2, pixelsPerPoint);
    }

    private static void DrawRing(SKCanvas canvas, LabelBox box, double pixelsPerPoint)
    {
        using SKPaint faint = PathPen.Elsewhere(pixelsPerPoint);
        using SKPaint full = PathPen.Of(PathKind.Direct, 0.1, pixelsPerPoint);
        SKPoint middle = Middle(box);
        canvas.DrawLine((float)box.Left, middle.Y, middle.X, middle.Y, full);
        canvas.DrawLine(middle.X, middle.Y, (float)box.Right, middle.Y, faint);
        PathSigns.DrawRing(canvas, middle, pixelsPerPoint);
    }

    private static void DrawLine(SKCanvas canvas, LabelBox box, double pixelsPerPoint)
    {
        using SKPaint line = PathPen.Of(PathKind.Direct, 0.1, pixelsPerPoint);
        canvas.DrawLine((float)box.Left, (float)box.CentreY, (float)box.Right, (float)box.CentreY, line);
    }
}
