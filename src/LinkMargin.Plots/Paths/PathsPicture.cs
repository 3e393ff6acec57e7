using LinkMargin.Engine.Paths;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;

namespace LinkMargin.Plots.Paths;

/// <summary>The paths of one link on the plans of the levels they touch and on a section through spot and seat, with a list of them.</summary>
public static class PathsPicture
{
    private const double BetweenPoints = 12;
    private const double HeadPoints = 18;
    private const double HeadLetterPoints = 12;
    private const double BeforeKeyPoints = 6;
    private const double BeforeListPoints = 8;

    // Paths that are nowhere further apart than the first are drawn side by side, at the distance of the second; points.
    private const double NearPoints = 10;
    private const double GapPoints = 9;
    private const double EasePoints = 48;

    /// <summary>The size at which each plan is so many points wide with no empty ground about it.</summary>
    /// <param name="request">What to draw.</param>
    /// <param name="planPoints">
    /// Width of one plan, points; null for 560 with one plan, 400 with several, or less for a narrow
    /// house.
    /// </param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point.</param>
    public static PictureSize FittingSize(PathsRequest request, double? planPoints = null, double pixelsPerPoint = 2.5)
    {
        PlanBounds bounds = PathsGround.Of(request);
        IReadOnlyList<int> levels = LevelsOf(request);
        double each = planPoints ?? bounds.SensibleWidth(levels.Count > 1 ? 400 : 560);
        double width = (levels.Count * each) + ((levels.Count - 1) * BetweenPoints) + PlanPlot.LeftFiguresPoints + (2 * Page.MarginPoints);
        int widthPixels = PictureSize.NearestAllowed(width * pixelsPerPoint, pixelsPerPoint);
        double scale = each * pixelsPerPoint / bounds.WidthMetres;
        double body = widthPixels - (2 * Page.MarginPoints * pixelsPerPoint);
        double height = (scale * bounds.HeightMetres)
            + (HeadPoints * pixelsPerPoint)
            + (PlanPlot.BottomFiguresPoints * pixelsPerPoint)
            + SectionOf(request, scale, body, pixelsPerPoint).HeightPixels
            + BelowPixels(request, levels, LetteredOf(request, levels, bounds, scale, pixelsPerPoint), scale, body, pixelsPerPoint)
            + Page.FurniturePixels(widthPixels, pixelsPerPoint, request.Title, request.Caption);
        return new(widthPixels, PictureSize.NearestAllowed(height, pixelsPerPoint), pixelsPerPoint);
    }

    /// <summary>Draws a PNG.</summary>
    public static byte[] Render(PathsRequest request, PictureSize size)
    {
        using Page page = Drawn(request, size, isVector: false);
        return page.ToPng();
    }

    /// <summary>Draws the same as vector graphics.</summary>
    public static VectorPicture Vector(PathsRequest request, PictureSize size)
    {
        using Page page = Drawn(request, size, isVector: true);
        return page.ToVector();
    }

    private static Page Drawn(PathsRequest request, PictureSize size, bool isVector)
    {
        if (request.Paths.Count == 0)
        {
            throw new ArgumentException("A picture of paths needs at least one.", nameof(request));
        }

        double s = size.PixelsPerPoint;
        var page = new Page(size, request.Title, request.Caption, isVector);
        PlanBounds bounds = PathsGround.Of(request);
        IReadOnlyList<int> levels = LevelsOf(request);
        LabelBox body = page.Body;
        double left = body.Left + (PlanPlot.LeftFiguresPoints * s), between = BetweenPoints * s;
        double width = (body.Right - left - ((levels.Count - 1) * between)) / levels.Count;
        double top = body.Top + (HeadPoints * s);
        IReadOnlyList<string> lettered = LetteredOf(request, levels, bounds, width / bounds.WidthMetres, s);
        double below = BelowPixels(request, levels, lettered, width / bounds.WidthMetres, body.Width, s);
        double section = SectionOf(request, width / bounds.WidthMetres, body.Width, s).HeightPixels;
        double bottom = body.Bottom - below - section - (PlanPlot.BottomFiguresPoints * s);
        PlanView[] views =
        [
            .. levels.Select((_, i) => PlanPlot.ViewIn(
                new(left + (i * (width + between)), top, left + (i * (width + between)) + width, Math.Max(top + 1, bottom)), bounds, s)),
        ];
        var panel = new PathsPanel(request, Drawn(request, views[0]), lettered);
        for (int i = 0; i < levels.Count; i++)
        {
            var plot = new PlanPlot(views[i], request.Unit) { HasLeftFigures = i == 0 };
            panel.Fill(plot, levels[i]);
            plot.Draw(page.Canvas);
            using var head = new Lettering(HeadLetterPoints * s, isBold: true);
            string name = head.Fitted(request.House.Levels[levels[i]].Name, views[i].Frame.Width);
            head.WriteMiddle(page.Canvas, name, views[i].Frame.Left, views[i].Frame.Top - (HeadPoints / 2 * s), Palette.Ink);
        }

        SectionOf(request, views[0].PixelsPerMetre, body.Width, s).Draw(page.Canvas, body.Left, body.Bottom - below - section, (cut, view) => DrawnOn(cut, request, view));
        var list = new PathList(request, body.Width, s);
        list.Draw(page.Canvas, body.Left, body.Bottom - list.HeightPixels);
        KeyStrip key = Key(request, levels, lettered, views[0].PixelsPerMetre, body.Width, s);
        key.Draw(page.Canvas, body.Left, body.Bottom - list.HeightPixels - (BeforeListPoints * s) - key.HeightPixels);
        return page;
    }

    // The names that find no place clear of walls on some plan, where these are so large.
    private static IReadOnlyList<string> LetteredOf(PathsRequest request, IReadOnlyList<int> levels, PlanBounds bounds, double pixelsPerMetre, double s)
    {
        PlanView view = PlanPlot.ViewIn(new(0, 0, pixelsPerMetre * bounds.WidthMetres, pixelsPerMetre * bounds.HeightMetres), bounds, s);
        var panel = new PathsPanel(request, Drawn(request, view), []);
        return [.. levels.SelectMany(level => panel.CrowdedOn(view, level)).Distinct()];
    }

    // From left to right: every level that a path is on, and those of spot and seat.
    private static IReadOnlyList<int> LevelsOf(PathsRequest request) =>
    [
        .. request.Paths.Where(IsLine).SelectMany(entry => PathTrack.Of(request.House, entry.Path).Parts).Select(part => part.LevelIndex)
            .Append(request.Spot.LevelIndex).Append(request.Seat.LevelIndex)
            .Distinct().Order(),
    ];

    private static bool IsLine(PathEntry entry) => entry.Path.Path.Kind != PathKind.Diffuse;

    /// <summary>The paths that consist of lines; those that coincide are drawn side by side.</summary>
    internal static IReadOnlyList<DrawnPath> Drawn(PathsRequest request, PlanView view) =>
        Drawn(request, view, (path, aside, ease) => PathTrack.Of(request.House, path, aside, ease));

    private static IReadOnlyList<DrawnPath> Drawn(PathsRequest request, PlanView view, Func<PathBudget, double, double, PathTrack> track)
    {
        PathEntry[] lines = [.. request.Paths.Where(IsLine)];
        double metres = view.PixelsPerPoint / view.PixelsPerMetre;
        double[] aside = PathBundles.AsideOf(
            [.. lines.Select(entry => track(entry.Path, 0, 1))], NearPoints * metres, GapPoints * metres);
        return [.. lines.Select((entry, i) => new DrawnPath(entry, track(entry.Path, aside[i], EasePoints * metres)))];
    }

    private static SectionStrip SectionOf(PathsRequest request, double pixelsPerMetre, double widthPixels, double s) =>
        new(SectionRequest.Of(request), pixelsPerMetre, widthPixels, s);

    /// <summary>The paths that consist of lines, on a section.</summary>
    internal static IReadOnlyList<DrawnPath> DrawnOn(SectionCut cut, PathsRequest request, PlanView view) =>
        Drawn(request, view, (path, aside, ease) => PathTrack.Of(cut, path, aside, ease));

    private static double BelowPixels(
        PathsRequest request, IReadOnlyList<int> levels, IReadOnlyList<string> lettered, double pixelsPerMetre, double widthPixels, double pixelsPerPoint) =>
        ((BeforeKeyPoints + BeforeListPoints) * pixelsPerPoint)
        + Key(request, levels, lettered, pixelsPerMetre, widthPixels, pixelsPerPoint).HeightPixels
        + new PathList(request, widthPixels, pixelsPerPoint).HeightPixels;

    private static KeyStrip Key(
        PathsRequest request, IReadOnlyList<int> levels, IReadOnlyList<string> lettered, double pixelsPerMetre, double widthPixels, double pixelsPerPoint) =>
        new(PathsKey.Entries(request, levels, lettered, pixelsPerMetre, pixelsPerPoint), widthPixels, pixelsPerPoint);
}
