using LinkMargin.Engine.Paths;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

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

    // A section of a long link is drawn at a smaller scale than the plans; one of a short link at most this high.
    private const double BeforeSectionPoints = 12;
    private const double MostSectionPoints = 420;

    /// <summary>The size for plans of a given width, without empty space around them.</summary>
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
            + SectionPixels(request, scale, body, pixelsPerPoint)
            + BelowPixels(request, levels, scale, body, pixelsPerPoint)
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
        double below = BelowPixels(request, levels, width / bounds.WidthMetres, body.Width, s);
        double section = SectionPixels(request, width / bounds.WidthMetres, body.Width, s);
        double bottom = body.Bottom - below - section - (PlanPlot.BottomFiguresPoints * s);
        PlanView[] views =
        [
            .. levels.Select((_, i) => PlanPlot.ViewIn(
                new(left + (i * (width + between)), top, left + (i * (width + between)) + width, Math.Max(top + 1, bottom)), bounds, s)),
        ];
        var panel = new PathsPanel(request, Drawn(request, views[0]));
        for (int i = 0; i < levels.Count; i++)
        {
            var plot = new PlanPlot(views[i], request.Unit) { HasLeftFigures = i == 0 };
            panel.Fill(plot, levels[i]);
            plot.Draw(page.Canvas);
            using var head = new Lettering(HeadLetterPoints * s, isBold: true);
            string name = head.Fitted(request.House.Levels[levels[i]].Name, views[i].Frame.Width);
            head.WriteMiddle(page.Canvas, name, views[i].Frame.Left, views[i].Frame.Top - (HeadPoints / 2 * s), Palette.Ink);
        }

        DrawSection(page.Canvas, request, body with { Top = body.Bottom - below - section, Bottom = body.Bottom - below }, views[0].PixelsPerMetre, s);
        var list = new PathList(request, body.Width, s);
        list.Draw(page.Canvas, body.Left, body.Bottom - list.HeightPixels);
        KeyStrip key = Key(request, levels, views[0].PixelsPerMetre, body.Width, s);
        key.Draw(page.Canvas, body.Left, body.Bottom - list.HeightPixels - (BeforeListPoints * s) - key.HeightPixels);
        return page;
    }

    // From left to right: every level with a path, and those of spot and seat.
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

    private static double SectionPixels(PathsRequest request, double pixelsPerMetre, double widthPixels, double s)
    {
        PlanBounds bounds = new Section(request).Bounds;
        double scale = SectionScale(bounds, pixelsPerMetre, widthPixels, s);
        return (scale * bounds.HeightMetres) + ((BeforeSectionPoints + HeadPoints + PlanPlot.BottomFiguresPoints) * s);
    }

    // The scale of the plans, or less if the section would be too wide or too high.
    private static double SectionScale(PlanBounds bounds, double pixelsPerMetre, double widthPixels, double s)
    {
        double width = Math.Max(1, widthPixels - ((PlanPlot.LeftFiguresPoints + SectionPanel.BesidePoints) * s));
        return Math.Min(pixelsPerMetre, Math.Min(width / bounds.WidthMetres, MostSectionPoints * s / bounds.HeightMetres));
    }

    private static void DrawSection(SKCanvas canvas, PathsRequest request, LabelBox box, double pixelsPerMetre, double s)
    {
        var panel = new SectionPanel(request);
        PlanBounds bounds = panel.Section.Bounds;
        double scale = SectionScale(bounds, pixelsPerMetre, box.Width, s);
        double left = Math.Round(box.Left + (PlanPlot.LeftFiguresPoints * s)), top = Math.Round(box.Top + ((BeforeSectionPoints + HeadPoints) * s));
        var frame = new LabelBox(left, top, left + Math.Round(scale * bounds.WidthMetres), top + Math.Round(scale * bounds.HeightMetres));
        var view = new PlanView(frame, bounds.Least, scale, s);
        panel.Draw(canvas, view, DrawnOn(panel.Section.Cut, request, view));
        using Lettering bold = new(HeadLetterPoints * s, isBold: true), plain = new(HeadLetterPoints * s, isBold: false);
        double y = top - (HeadPoints / 2 * s);
        string head = "section ", rest = $"from {request.Spot.Name} to {request.Seat.Name}, paths{(request.Runs.Count > 0 ? " and new cable runs" : "")} projected onto it";
        bold.WriteMiddle(canvas, head, left, y, Palette.Ink);
        plain.WriteMiddle(canvas, plain.Fitted(rest, box.Right - left - bold.WidthOf(head)), left + bold.WidthOf(head), y, Palette.SoftInk);
    }

    /// <summary>The paths that consist of lines, on a section.</summary>
    internal static IReadOnlyList<DrawnPath> DrawnOn(SectionCut cut, PathsRequest request, PlanView view) =>
        Drawn(request, view, (path, aside, ease) => PathTrack.Of(cut, path, aside, ease));

    private static double BelowPixels(
        PathsRequest request, IReadOnlyList<int> levels, double pixelsPerMetre, double widthPixels, double pixelsPerPoint) =>
        ((BeforeKeyPoints + BeforeListPoints) * pixelsPerPoint)
        + Key(request, levels, pixelsPerMetre, widthPixels, pixelsPerPoint).HeightPixels
        + new PathList(request, widthPixels, pixelsPerPoint).HeightPixels;

    private static KeyStrip Key(
        PathsRequest request, IReadOnlyList<int> levels, double pixelsPerMetre, double widthPixels, double pixelsPerPoint) =>
        new(PathsKey.Entries(request, levels, pixelsPerMetre, pixelsPerPoint), widthPixels, pixelsPerPoint);
}
